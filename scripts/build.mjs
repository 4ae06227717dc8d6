// Builds the app and the command line into dist/: npm run build
import { buildAll } from './lib/build.mjs';
import { runScript } from './lib/complaint.mjs';
import { installPackages } from './lib/install.mjs';
import { checkNode } from './lib/node-version.mjs';

await runScript(async () => {
  checkNode();
  installPackages();
  await buildAll();
  process.stdout.write('Built into dist/: serve the folder, or run node dist/cli.js --help\n');
});
