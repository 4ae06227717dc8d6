// Runs a TypeScript file as it is: node scripts/run-ts.mjs FILE words…
import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import { Complaint, runScript } from './lib/complaint.mjs';
import { installPackages } from './lib/install.mjs';
import { checkNode } from './lib/node-version.mjs';
import { ROOT } from './lib/paths.mjs';

await runScript(async () => {
  checkNode();
  const [file, ...words] = process.argv.slice(2);
  if (file === undefined) throw new Complaint('Name a TypeScript file: node scripts/run-ts.mjs FILE words…', 2);
  const path = resolve(file);
  if (!existsSync(path)) throw new Complaint(`There is no file ${file}.`);
  installPackages();
  const { runnerImport } = await import('vite');
  // The file sees its own words where it would see them if Node ran it.
  process.argv = [process.argv[0], path, ...words];
  await runnerImport(path, { root: ROOT, configFile: false, logLevel: 'warn' });
});
