// Writes a set of files as the command line writes its own, and nothing else: node writer.js SEED --out FOLDER
import process from 'node:process';
import { seededRandom } from '../../src/base/random.ts';
import { writeAll } from '../../src/cli/output-folder.ts';
import { RECORD_NAME, recordOf } from '../../src/cli/output-record.ts';

const [seed, , folder] = process.argv.slice(2);
const random = seededRandom(Number(seed));
const files = new Map<string, Uint8Array>();
for (let n = 1; n <= 24; n += 1) {
  const bytes = new Uint8Array(Math.floor(10 ** (1 + 4 * random())));
  for (let i = 0; i < bytes.length; i += 1) bytes[i] = random() * 256;
  files.set(`sheet-${n}.svg`, bytes);
}
await writeAll(folder, new Map<string, Uint8Array | string>([...files, [RECORD_NAME, await recordOf(files)]]));
