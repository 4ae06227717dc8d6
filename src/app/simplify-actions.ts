import { setSimplify, type SimplifyMeasure } from '../project/simplify-commands.ts';
import type { Workbench } from './workbench.ts';

/** Makes the sculpt simpler for paper, or takes it as it is: null. What is marked and named on it by now keeps its place. */
export async function simplifyTo(bench: Workbench, measure: SimplifyMeasure | null): Promise<void> {
  const { part } = bench;
  const { sculpt } = bench.bench;
  if (measure === null) return bench.run(setSimplify(null));
  if (part === null || sculpt === null) return;
  const keep = await bench.workshop.simplifyKeeps(part);
  if (bench.bench.sculpt !== sculpt) return;
  // More was marked meanwhile: what has to stay is asked for again.
  if (bench.part !== part) return await simplifyTo(bench, measure);
  if (keep !== null) bench.run(setSimplify({ ...measure, keep }));
}
