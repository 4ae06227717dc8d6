// Lists what the build holds of others' work, with its terms, in shared/licences.json: npm run licences
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { buildIfStale } from './lib/build.mjs';
import { runScript } from './lib/complaint.mjs';
import { installPackages } from './lib/install.mjs';
import { readLicences } from './lib/licences.mjs';
import { checkNode } from './lib/node-version.mjs';
import { ROOT } from './lib/paths.mjs';

await runScript(async () => {
  checkNode();
  installPackages();
  await buildIfStale();
  const works = readLicences();
  writeFileSync(join(ROOT, 'shared/licences.json'), `${JSON.stringify({ works }, null, 2)}\n`);
  process.stdout.write(works.map(({ name, version, licence }) => `${name} ${version}: ${licence}\n`).join(''));
  // The app shows the list, so it is built once more if the list has changed.
  await buildIfStale();
});
