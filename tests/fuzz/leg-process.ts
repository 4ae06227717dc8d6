// One leg of a long run in a process of its own, so that a hang or a lack of memory ends it alone: TARGET SEED COUNT FILE.
// The input in hand stands in the file, its number before it; what the leg came to is the last line of the output.
import { openSync, writeSync } from 'node:fs';
import { peakMb } from './peak-memory.ts';
import { runLeg } from './leg.ts';
import { shrunk } from './shrink.ts';
import { targetNamed } from './targets.ts';
import { faultName, tryInput } from './try-input.ts';

const [name, seed, count, file] = process.argv.slice(2);
const target = targetNamed(name);
const hand = openSync(file, 'w');
const head = new Uint32Array(2);

const began = performance.now();
const leg = await runLeg({
  target,
  seed: Number(seed),
  count: Number(count),
  isMeasured: true,
  before: (bytes, number) => {
    head.set([number, bytes.length]);
    writeSync(hand, bytes, 0, bytes.length, 8);
    writeSync(hand, head, 0, 8, 0);
  },
});
const ms = performance.now() - began;
const faults = [];
for (const [called, { fault, bytes }] of leg.faults) {
  const smallest = await shrunk(bytes, async (less) => {
    const tried = await tryInput(target, less, true);
    return 'fault' in tried && faultName(tried.fault) === called;
  });
  faults.push({ name: called, fault, base64: Buffer.from(smallest).toString('base64') });
}
const { inputs, oks, kinds, slowestMs } = leg;
process.stdout.write(
  `\n${JSON.stringify({ inputs, oks, kinds, slowestMs, peakMb: peakMb(), ms, codes: [...leg.codes], faults })}\n`,
);
process.exit(0);
