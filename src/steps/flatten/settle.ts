import { shareOfWork, type Work } from '../../base/work.ts';
import type { FlatSystem } from './flat-system.ts';
import type { FlatTerm } from './flat-term.ts';
import type { FlattenOptions } from './flatten-options.ts';
import { grainThreads } from './grain-threads.ts';
import { FIRST_LOOK_GAIN, minimise, SETTLED_GAIN, type FlatProblem, type Look, type Minimum } from './newton.ts';
import { seamSprings } from './seam-springs.ts';
import { straightLines } from './straight-lines.ts';
import { evenSlope, excesses } from './triangle-cost.ts';

const NO_EDGES = new Uint32Array(0);

/**
 * From a shape without a flip to the one of least cost under all that was asked for.
 * @param look  see `minimise`.
 * @returns null where the start is crushed beyond what numbers can hold.
 */
export async function settle(
  patchSystem: FlatSystem,
  near: Float64Array,
  options: FlattenOptions,
  work: Work,
  look?: Look,
): Promise<Minimum | null> {
  const { squashPrice = 1, evenOut = false, quality = 'full' } = options;
  const lines = straightLines(patchSystem, options.straightRuns ?? [], near);
  const system = lines?.system ?? patchSystem;
  const cost = { weights: stiffened(system.rest.weight, options.stiffness), squashPrice, evenOut: null };
  const termsAt = seamsDearer(system, options, lines?.term ?? null);
  const problem: FlatProblem = { system, cost, terms: termsAt(1) };
  const begin = lines?.extend(near) ?? near;
  const enough = quality === 'first' ? FIRST_LOOK_GAIN : SETTLED_GAIN;
  const show: Look = (flat, steps) => look?.(flat.subarray(0, near.length), steps);
  const mean = await minimise(problem, begin, evenOut ? shareOfWork(work, 0, 0.4) : work, enough, show);
  if (mean === null) return null;
  const reached =
    evenOut && quality === 'full' ? await evenedOut(problem, termsAt, mean, shareOfWork(work, 0.4, 1)) : mean;
  if (reached === null) return null;
  return { ...reached, flat: reached.flat.subarray(0, near.length) };
}

/** All costs beside the triangles', with the price of seams raised by a factor. */
function seamsDearer(
  system: FlatSystem,
  options: FlattenOptions,
  lines: FlatTerm | null,
): (factor: number) => readonly FlatTerm[] {
  const { heldEdges = NO_EDGES, seamPrice = 0, grain } = options;
  const others = [grain === undefined ? null : grainThreads(system, grain), lines];
  return (factor) =>
    [seamSprings(heldEdges, factor * seamPrice, system.rest.points, system.plan), ...others].filter(
      (term) => term !== null,
    );
}

/** Powers by which the worst is evened out, each from the result of the one before. */
const EVEN_POWERS = [2, 4];
/** Mean excess below which there is nothing to even out: a strain of a few millionths. */
const LEAST_EXCESS = 1e-10;
/** Share of the area that is no worse than where the price of seams is matched to the foam's. */
const SHARE_NOT_WORSE = 0.99;

/**
 * From the shape whose mean is least to the one whose worst is eased, step by step. Foam that is stretched much becomes stiff by this, and
 * would pull the seams out of length: their price rises with it.
 */
async function evenedOut(
  { system, cost, terms }: FlatProblem,
  termsAt: (factor: number) => readonly FlatTerm[],
  mean: Minimum,
  work: Work,
): Promise<Minimum | null> {
  const found = excesses(system.rest, cost.squashPrice, mean.flat);
  const excess = found.reduce((sum, each, t) => sum + each * system.rest.weight[t], 0);
  if (!(excess > LEAST_EXCESS)) return mean;
  const bad = excessOfShare(found, system.rest.weight, SHARE_NOT_WORSE);
  let { flat, steps, converged } = mean;
  for (const [i, power] of EVEN_POWERS.entries()) {
    const part = shareOfWork(work, i / EVEN_POWERS.length, (i + 1) / EVEN_POWERS.length);
    const evenOut = { excess, power };
    const dearer = terms.length === 0 ? terms : termsAt(evenSlope(evenOut, bad));
    const next = await minimise({ system, cost: { ...cost, evenOut }, terms: dearer }, flat, part);
    if (next === null) return null;
    flat = next.flat;
    steps += next.steps;
    converged = next.converged;
  }
  return { flat, steps, converged };
}

/** The smallest excess that triangles of together this share of the area do not exceed. */
function excessOfShare(found: Float64Array, weight: Float64Array, share: number): number {
  const order = Uint32Array.from(found.keys()).sort((s, t) => found[s] - found[t] || s - t);
  const total = weight.reduce((sum, each) => sum + each, 0);
  let before = 0;
  for (const t of order) {
    before += weight[t];
    if (before >= share * total) return found[t];
  }
  return found[order[order.length - 1]];
}

function stiffened(weight: Float64Array, stiffness: Float64Array | undefined): Float64Array {
  return stiffness === undefined ? weight : weight.map((share, t) => share * stiffness[t]);
}
