// Flattens random discs full of needles and empty triangles: node scripts/run-ts.mjs tests/bench/flatten-needles.bench.ts [how many]
// Tells how many flip (none may), how many had not settled within the step limit, and the most steps and milliseconds any took.
import { seededRandom } from '../../src/base/random.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import { checkFlatPiece } from '../../src/steps/flatten/check-flat-piece.ts';
import { flattenPatch } from '../../src/steps/flatten/flatten-patch.ts';
import { needleDisc } from '../steps/flatten/needle-disc.ts';
import { onePatch } from '../steps/flatten/flatten-support.ts';

const count = Number(process.argv[2] ?? 500);
let flipped = 0;
const unsettled: number[] = [];
let mostSteps = 0;
let mostMs = 0;
let checksum = 0;
for (let seed = 1; seed <= count; seed += 1) {
  const mesh = needleDisc(seededRandom(seed));
  const patch = onePatch(mesh);
  const began = performance.now();
  const result = await flattenPatch(patch, mesh.positions, {}, QUIET_WORK);
  mostMs = Math.max(mostMs, performance.now() - began);
  if (!result.ok) throw new Error(`seed ${seed}: ${result.problem.text}`);
  checkFlatPiece(patch, result.value);
  flipped += result.value.flipped;
  if (!result.value.solve.converged) unsettled.push(seed);
  mostSteps = Math.max(mostSteps, result.value.solve.steps);
  checksum += result.value.energy;
}
process.stdout.write(
  `${count} discs: ${flipped} flipped, ${unsettled.length} not settled (${unsettled.slice(0, 20).join(' ')}), at most ${mostSteps} steps and ${mostMs.toFixed(0)} ms, checksum ${checksum.toFixed(6)}\n`,
);
