// Installs, builds and serves the app on this machine: npm start
import { join } from 'node:path';
import { buildIfStale } from './lib/build.mjs';
import { runScript } from './lib/complaint.mjs';
import { installPackages } from './lib/install.mjs';
import { checkNode } from './lib/node-version.mjs';
import { hasSomebodyToShow, openBrowser } from './lib/open-browser.mjs';
import { ROOT } from './lib/paths.mjs';

/** The first port that is tried. */
const PORT = 5179;

await runScript(async () => {
  checkNode();
  if (installPackages()) process.stdout.write('Packages installed.\n');
  if (await buildIfStale()) process.stdout.write('App built.\n');
  const { preview } = await import('vite');
  const server = await preview({
    root: ROOT,
    configFile: join(ROOT, 'scripts/vite.config.ts'),
    logLevel: 'warn',
    // Only this machine can reach it; a port that is taken is passed over.
    preview: { host: '127.0.0.1', port: PORT, strictPort: false, open: false },
  });
  const address = `http://127.0.0.1:${server.httpServer.address().port}/`;
  process.stdout.write(`Foamloft is at ${address} (end it with Ctrl+C)\n`);
  if (hasSomebodyToShow()) openBrowser(address);
});
