import { shareOfWork, type Work } from '../../base/work.ts';
import type { FlatSystem } from './flat-system.ts';
import type { FlattenOptions } from './flatten-options.ts';
import { grainThreads } from './grain-threads.ts';
import { FIRST_LOOK_GAIN, minimise, SETTLED_GAIN, type FlatProblem, type Minimum } from './newton.ts';
import { seamSprings } from './seam-springs.ts';
import { straightLines } from './straight-lines.ts';
import { meanExcess } from './triangle-cost.ts';

const NO_EDGES = new Uint32Array(0);

/** From a shape without a flip to the one of least cost under all that was asked for. */
export async function settle(
  patchSystem: FlatSystem,
  near: Float64Array,
  options: FlattenOptions,
  work: Work,
): Promise<Minimum> {
  const { heldEdges, seamPrice = 0, squashPrice = 1, evenOut = false, straightRuns, grain, quality = 'full' } = options;
  const lines = straightLines(patchSystem, straightRuns ?? [], near);
  const system = lines?.system ?? patchSystem;
  const terms = [
    seamSprings(heldEdges ?? NO_EDGES, seamPrice, system.rest.points, system.plan),
    grain === undefined ? null : grainThreads(system, grain),
    lines?.term ?? null,
  ].filter((term) => term !== null);
  const cost = { weights: stiffened(system.rest.weight, options.stiffness), squashPrice, evenOut: null };
  const problem: FlatProblem = { system, cost, terms };
  const begin = lines?.extend(near) ?? near;
  const enough = quality === 'first' ? FIRST_LOOK_GAIN : SETTLED_GAIN;
  const mean = await minimise(problem, begin, evenOut ? shareOfWork(work, 0, 0.4) : work, enough);
  const reached = evenOut && quality === 'full' ? await evenedOut(problem, mean, shareOfWork(work, 0.4, 1)) : mean;
  return { ...reached, flat: reached.flat.subarray(0, near.length) };
}

/** Powers by which the worst is evened out, each from the result of the one before. */
const EVEN_POWERS = [2, 4];
/** Mean excess below which there is nothing to even out: a strain of a few millionths. */
const LEAST_EXCESS = 1e-10;

/** From the shape whose mean is least to the one whose worst is eased, step by step. */
async function evenedOut(problem: FlatProblem, mean: Minimum, work: Work): Promise<Minimum> {
  const excess = meanExcess(problem.system.rest, problem.cost, mean.flat);
  if (!(excess > LEAST_EXCESS)) return mean;
  let { flat, steps } = mean;
  let { converged } = mean;
  for (const [i, power] of EVEN_POWERS.entries()) {
    const part = shareOfWork(work, i / EVEN_POWERS.length, (i + 1) / EVEN_POWERS.length);
    const cost = { ...problem.cost, evenOut: { excess, power } };
    const next = await minimise({ ...problem, cost }, flat, part);
    flat = next.flat;
    steps += next.steps;
    converged = next.converged;
  }
  return { flat, steps, converged };
}

function stiffened(weight: Float64Array, stiffness: Float64Array | undefined): Float64Array {
  return stiffness === undefined ? weight : weight.map((share, t) => share * stiffness[t]);
}
