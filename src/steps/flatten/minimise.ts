import type { Work } from '../../base/work.ts';
import { SparseLdl } from '../../geom/sparse-ldl.ts';
import { firstFlip } from './flip-barrier.ts';
import type { RestShape } from './rest-shape.ts';
import { addSpringDerivatives, springEnergy, type SeamSprings } from './seam-springs.ts';
import { dirichletDerivatives, dirichletEnergy, type HessianPattern } from './symmetric-dirichlet.ts';

export interface Minimum {
  readonly flat: Float64Array;
  readonly energy: number;
  readonly steps: number;
  readonly converged: boolean;
}

/** Newton steps at most; patches of the references need 5 to 40. */
const MOST_STEPS = 150;

/** Finished when the next step promises to lower the energy by less than this (the energy is about 4): lengths are then right to 1e-8. */
const LEAST_GAIN = 1e-16;

/** Below this promised gain rounding hides the energy's change: steps are taken whole, they square the error each time. */
const ROUNDING_GAIN = 1e-11;

/** Share of the way to the first flip that a step may go. */
const BARRIER_SHARE = 0.9;

/** Part of the promised gain that a step must deliver (Armijo 1966). */
const ARMIJO = 1e-4;

/**
 * Projected Newton on the symmetric Dirichlet energy with a line search that stops before the first flip
 * (Shtengel et al., "Geometric Optimization via Composite Majorization", 2017, for the clamping idea; Smith and Schaefer 2015 for the
 * barrier). Nothing is ever rescaled.
 * @param start  flat coordinates without a flip.
 * @param order  order of elimination of the vertices; x and y of one vertex stay together.
 * @param springs seam edges that are to keep their length; their price is added to the energy.
 */
export async function minimise(
  shape: RestShape,
  pattern: HessianPattern,
  springs: SeamSprings,
  order: Int32Array,
  start: Float64Array,
  work: Work,
): Promise<Minimum> {
  const { vertexCount, triangles } = shape;
  const costOf = (candidate: Float64Array): number =>
    dirichletEnergy(shape, candidate) + springEnergy(springs, candidate);
  const order2 = new Int32Array(2 * vertexCount);
  for (let i = 0; i < vertexCount; i += 1) {
    order2[2 * i] = 2 * order[i];
    order2[2 * i + 1] = 2 * order[i] + 1;
  }
  const system = new SparseLdl(2 * vertexCount, pattern.rows, pattern.cols, order2);
  const gradient = new Float64Array(2 * vertexCount);
  const direction = new Float64Array(2 * vertexCount);
  const hessian = new Float64Array(pattern.rows.length);
  let flat = start;
  let energy = costOf(flat);
  if (energy === Infinity) throw new Error('minimise: the start has a flipped triangle');
  for (let steps = 0; steps < MOST_STEPS; steps += 1) {
    await work.pause(steps / (steps + 12));
    dirichletDerivatives(shape, pattern, flat, gradient, hessian);
    addSpringDerivatives(springs, flat, gradient, hessian);
    hold(hessian, vertexCount);
    if (!system.factor(hessian)) return { flat, energy, steps, converged: false };
    for (let i = 0; i < direction.length; i += 1) direction[i] = -gradient[i];
    system.solve(direction);
    let gain = 0;
    for (let i = 0; i < direction.length; i += 1) gain -= direction[i] * gradient[i];
    if (gain < LEAST_GAIN) return { flat, energy, steps, converged: true };
    const found = search(
      costOf,
      flat,
      energy,
      direction,
      gain,
      Math.min(1, BARRIER_SHARE * firstFlip(triangles, flat, direction)),
    );
    if (found === null) return { flat, energy, steps, converged: gain < ROUNDING_GAIN };
    ({ flat, energy } = found);
  }
  return { flat, energy, steps: MOST_STEPS, converged: false };
}

/** A whiff of mass on the diagonal: moves and turns of the whole piece cost nothing and would leave the matrix singular. */
function hold(hessian: Float64Array, vertexCount: number): void {
  let trace = 0;
  for (let v = 0; v < vertexCount; v += 1) trace += hessian[3 * v] + hessian[3 * v + 2];
  const whiff = (1e-10 * trace) / (2 * vertexCount);
  for (let v = 0; v < vertexCount; v += 1) {
    hessian[3 * v] += whiff;
    hessian[3 * v + 2] += whiff;
  }
}

function search(
  costOf: (flat: Float64Array) => number,
  flat: Float64Array,
  energy: number,
  direction: Float64Array,
  gain: number,
  longest: number,
): { flat: Float64Array; energy: number } | null {
  const next = new Float64Array(flat.length);
  for (let step = longest, tries = 0; tries < 40; step /= 2, tries += 1) {
    for (let i = 0; i < flat.length; i += 1) next[i] = flat[i] + step * direction[i];
    const nextEnergy = costOf(next);
    if (nextEnergy <= energy - ARMIJO * step * gain) return { flat: next, energy: nextEnergy };
    if (gain < ROUNDING_GAIN && nextEnergy < energy + ROUNDING_GAIN) return { flat: next, energy: nextEnergy };
  }
  return null;
}
