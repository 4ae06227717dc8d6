import { runWithPauses } from '../../base/stepwise.ts';
import type { Work } from '../../base/work.ts';
import { ConjugateSearch } from '../../geom/sparse-conjugate.ts';
import { SparseFactor } from '../../geom/sparse-factor.ts';
import type { FactorPlan } from '../../geom/sparse-plan.ts';
import type { FlatSystem } from './flat-system.ts';
import type { FlatTerm } from './flat-term.ts';
import { hasFlip, stepToFirstFlip } from './flips.ts';
import { addUpDerivatives, costOfTriangles, type TriangleCost } from './triangle-cost.ts';

/** What is to be made small: the cost of the triangles and of all else that is asked of the piece. */
export interface FlatProblem {
  readonly system: FlatSystem;
  readonly cost: TriangleCost;
  readonly terms: readonly FlatTerm[];
}

/** A flat shape and how it was reached. */
export interface Minimum {
  readonly flat: Float64Array;
  readonly steps: number;
  readonly converged: boolean;
}

/** Is shown a shape that is on its way: it must not be changed or kept. */
export type Look = (flat: Float64Array, steps: number) => void;

/** Steps after which the shape is taken as it is; the hardest patches tried needed about forty. */
const MOST_STEPS = 200;
/** So many steps that together lower the cost by less than this lead nowhere: the shape is taken as it is. */
const STALLED_STEPS = 20;
const STALLED_GAIN = 1e-9;

/**
 * Settled when the next step promises to lower the energy (about 4) by less than this. The promise is g' H^-1 g, the gradient measured
 * in the metric of the second derivative, so it means the same for any size and fineness: once that step is taken lengths are right to 1e-9.
 */
export const SETTLED_GAIN = 1e-14;
/** Promise from which the shape is near enough for a first look: edges are then right to about a thousandth. */
export const FIRST_LOOK_GAIN = 1e-5;
/** Below this promise rounding hides the change of the energy: steps are taken whole. */
const ROUNDING_GAIN = 1e-11;
/** A promise below rounding that no longer falls by this share from step to step is all that numbers can tell. */
const STUCK_SHARE = 0.5;
/** Below this promise, after a whole step, the curvature is taken as it is instead of made positive triangle by triangle. */
const NEAR_GAIN = 0.1;
/** Rounds of conjugate gradients at most: they cost about as much as half a factorisation. */
const MOST_ROUNDS = 8;
/** Share of the gradient a search may leave, squared: the next step's error is no smaller anyway. */
const ENOUGH_SHARE = 1e-4;
/** What the last step may leave at most, and so what is little enough for any: lengths are then right to 1e-9. */
const LITTLE_LEFT = ENOUGH_SHARE * SETTLED_GAIN;
/** A search that leaves no more than this was well guided. */
const GOOD_SHARE = 0.01;
/** A step that leaves more than this is not worth taking. */
const POOR_SHARE = 0.05;

type Pause = () => Promise<void> | undefined;
/** Share of the way to the first flip that a step may go. */
const BARRIER_SHARE = 0.9;
/** Part of the promise that a step must keep (Armijo 1966). */
const ARMIJO = 1e-4;
const MOST_HALVINGS = 40;
/** Weight of the pull that keeps every vertex where it is, next to its own curvature: moves and turns of the whole piece cost nothing else. */
const HOLD = 1e-10;

/**
 * Newton's method on the cost of a flat piece, with a line search that stops before the first flip (Smith and Schaefer 2015).
 *
 * Far from the minimum the curvature of each triangle is made positive in closed form (Teran et al. 2005; Smith, de Goes and Kim 2019)
 * and factored. Near it the curvature is taken as it is and the step found by a few rounds of conjugate gradients, guided by the last
 * factor: the error is squared with each step, and most factorisations are saved. Nothing is rescaled.
 * @param start   flat coordinates without a flip, two per node of the system's plan; not changed.
 * @returns null where triangles are crushed so far that numbers cannot tell the curvature of the cost.
 * @param enough  promise at which to stop: {@link SETTLED_GAIN}, or {@link FIRST_LOOK_GAIN} (not `converged` then).
 * @param room    for the matrices, of the same plan, where it is at hand.
 * @param isHopeless  asked after each step but the last ones: true to leave the shape as it is then.
 * @param look    called once on the way, with the first shape that promises less than {@link FIRST_LOOK_GAIN}, unless it is the last one.
 */
export async function minimise(
  problem: FlatProblem,
  start: Float64Array,
  work: Work,
  enough = SETTLED_GAIN,
  look?: Look,
  room = new NewtonRoom(problem.system.plan),
  isHopeless: (flat: Float64Array, steps: number) => boolean = () => false,
): Promise<Minimum | null> {
  const { corners } = problem.system.rest;
  const newton = new NewtonStep(problem, room);
  const { step } = room;
  let flat = start.slice();
  let next = new Float64Array(start.length);
  let cost = newton.costOf(flat);
  if (cost === Infinity) throw new Error('minimise: the start has a flipped triangle');
  let near = false;
  let lastGain = Infinity;
  let costBefore = Infinity;
  let isSeen = false;
  for (let steps = 0; steps < MOST_STEPS; steps += 1) {
    const done = steps / (steps + 12);
    await work.pause(done);
    const gain = await newton.find(flat, near, () => work.pause(done));
    if (gain === null) return null;
    const isStuck = gain < ROUNDING_GAIN && gain > STUCK_SHARE * lastGain;
    if (gain < enough || isStuck) {
      // The step is known, so it is taken: it squares what error is left.
      addStep(flat, step, 1, next);
      const isBetter = newton.limit(flat) > 1 && newton.costOf(next) <= cost + ROUNDING_GAIN && !hasFlip(corners, next);
      return { flat: isBetter ? next : flat, steps, converged: gain < SETTLED_GAIN || isStuck };
    }
    if (steps > 0 && isHopeless(flat, steps)) return { flat, steps, converged: false };
    if (gain < FIRST_LOOK_GAIN && !isSeen) {
      look?.(flat, steps);
      isSeen = true;
    }
    lastGain = gain;
    if (steps % STALLED_STEPS === 0) {
      if (costBefore - cost < STALLED_GAIN) return { flat, steps, converged: false };
      costBefore = cost;
    }
    let share = Math.min(1, BARRIER_SHARE * newton.limit(flat));
    let reached = Infinity;
    let found = false;
    for (let tries = 0; tries < MOST_HALVINGS && !found; tries += 1) {
      if (tries > 0) share /= 2;
      addStep(flat, step, share, next);
      reached = newton.costOf(next);
      found = reached <= cost - ARMIJO * share * gain || (gain < ROUNDING_GAIN && reached < cost + ROUNDING_GAIN);
      found &&= !hasFlip(corners, next);
    }
    if (!found) return { flat, steps, converged: gain < ROUNDING_GAIN };
    near = share === 1 && gain < NEAR_GAIN;
    cost = reached;
    [flat, next] = [next, flat];
  }
  return { flat, steps: MOST_STEPS, converged: false };
}

function addStep(flat: Float64Array, step: Float64Array, share: number, next: Float64Array): void {
  for (let i = 0; i < step.length; i += 1) next[i] = flat[i] + share * step[i];
}

/** Room for Newton's method on one plan: taken once, used by one search after the other. */
export class NewtonRoom {
  readonly step: Float64Array;
  readonly gradient: Float64Array;
  readonly factor: SparseFactor;
  readonly search: ConjugateSearch;

  constructor(plan: FactorPlan) {
    this.step = new Float64Array(2 * plan.size);
    this.gradient = new Float64Array(2 * plan.size);
    this.factor = new SparseFactor(plan, 2);
    this.search = new ConjugateSearch(this.factor);
  }
}

/** Finds the next step; keeps the factor from one to the next. */
class NewtonStep {
  readonly #problem: FlatProblem;
  readonly #room: NewtonRoom;
  /** True while the room holds a whole factor from a shape of this search. */
  #hasGuide = false;

  constructor(problem: FlatProblem, room: NewtonRoom) {
    this.#problem = problem;
    this.#room = room;
  }

  costOf(flat: Float64Array): number {
    const { system, cost, terms } = this.#problem;
    let sum = costOfTriangles(system.rest, cost, flat);
    for (const term of terms) sum += term.costOf(flat);
    return sum;
  }

  /** How much of `step` there is before a triangle flips or a term's own end is reached. */
  limit(flat: Float64Array): number {
    const { system, terms } = this.#problem;
    let least = stepToFirstFlip(system.rest.corners, flat, this.#room.step);
    for (const term of terms) least = Math.min(least, term.stepLimit?.(flat, this.#room.step) ?? Infinity);
    return least;
  }

  /**
   * Fills `step` with the way from `flat` towards the minimum.
   * @param near   the last factor is from a shape hardly different from this one.
   * @param pause  called now and then while a factor is made.
   * @returns how much the step promises to lower the cost (twice that of a quadratic), >= 0; null where no step can be found.
   */
  async find(flat: Float64Array, near: boolean, pause: Pause): Promise<number | null> {
    const isFound = near && this.#hasGuide ? await this.#findNear(flat, pause) : await this.#findFar(flat, pause);
    if (!isFound) return null;
    const { step, gradient } = this.#room;
    let promise = 0;
    for (let i = 0; i < step.length; i += 1) promise -= gradient[i] * step[i];
    return Number.isFinite(promise) ? promise : null;
  }

  /** By a new factor of the curvature made positive. @returns false where even that is not positive in numbers. */
  async #findFar(flat: Float64Array, pause: Pause): Promise<boolean> {
    this.#derive(flat, false);
    this.#hasGuide = await this.#findByFactoring(pause);
    return this.#hasGuide;
  }

  /** Guided by the last factor; where that guides poorly, by a new one of the curvature as it is, which may turn out not positive. */
  async #findNear(flat: Float64Array, pause: Pause): Promise<boolean> {
    const { step, gradient, search } = this.#room;
    this.#derive(flat, true);
    const searching = search.solveSteps(gradient, step, ENOUGH_SHARE, MOST_ROUNDS, LITTLE_LEFT);
    const { left, reached } = await runWithPauses(searching, pause);
    for (let i = 0; i < step.length; i += 1) step[i] = -step[i];
    if (reached || left <= GOOD_SHARE) return true;
    this.#hasGuide = await this.#findByFactoring(pause);
    return this.#hasGuide || left <= POOR_SHARE || (await this.#findFar(flat, pause));
  }

  /** Factors what has been derived; leaves `step` as it was where that is not positive. */
  async #findByFactoring(pause: Pause): Promise<boolean> {
    const { step, gradient, factor } = this.#room;
    const isPositive = await factor.factorWithPauses(pause);
    if (!isPositive) return false;
    for (let i = 0; i < step.length; i += 1) step[i] = -gradient[i];
    await runWithPauses(factor.solveSteps(step), pause);
    return true;
  }

  #derive(flat: Float64Array, exact: boolean): void {
    const { gradient, factor } = this.#room;
    const { values, plan } = factor;
    const { system, cost, terms } = this.#problem;
    addUpDerivatives(system, cost, flat, gradient, values, exact ? -Infinity : 0);
    for (const term of terms) term.addDerivatives(flat, gradient, values, exact);
    for (let c = 0; c < plan.size; c += 1) {
      const at = 4 * plan.entryStarts[c];
      const more = HOLD * (values[at] + values[at + 3]);
      values[at] += more;
      values[at + 3] += more;
    }
  }
}
