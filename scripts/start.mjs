// Installs, builds and serves the app on this machine: npm start
import { serveApp } from './lib/app-server.mjs';
import { buildIfStale } from './lib/build.mjs';
import { runScript } from './lib/complaint.mjs';
import { installPackages } from './lib/install.mjs';
import { checkNode } from './lib/node-version.mjs';
import { hasSomebodyToShow, openBrowser } from './lib/open-browser.mjs';

/** The first port that is tried. */
const PORT = 5179;

await runScript(async () => {
  checkNode();
  if (installPackages()) process.stdout.write('Packages installed.\n');
  if (await buildIfStale()) process.stdout.write('App built.\n');
  // Only this machine can reach it; a port that is taken is passed over.
  const { url: address } = await serveApp(PORT);
  process.stdout.write(`Foamloft is at ${address} (end it with Ctrl+C)\n`);
  if (hasSomebodyToShow()) openBrowser(address);
});
