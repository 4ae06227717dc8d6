// Tells how large the scripts of the built app are: npm run sizes (after npm run build)
import { join } from 'node:path';
import { Complaint, runScript } from './lib/complaint.mjs';
import { FIRST_LIMIT, firstBytes, sizedScripts, sizeTable } from './lib/first-scripts.mjs';
import { ROOT } from './lib/paths.mjs';

await runScript(() => {
  const scripts = sizedScripts(join(ROOT, process.argv[2] ?? 'dist'));
  process.stdout.write(`${sizeTable(scripts)}\n`);
  if (firstBytes(scripts) > FIRST_LIMIT) throw new Complaint('The scripts before the first picture are too large.');
});
