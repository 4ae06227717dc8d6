import { shareOfWork, type Work } from '../../base/work.ts';
import type { Patch } from '../../model/patch.ts';
import type { FlatSystem } from './flat-system.ts';
import type { FlattenOptions } from './flatten-options.ts';
import { grainThreads } from './grain-threads.ts';
import { minimiseApart } from './minimise-apart.ts';
import {
  FIRST_LOOK_GAIN,
  minimise,
  NewtonRoom,
  SETTLED_GAIN,
  type FlatProblem,
  type Look,
  type Minimum,
} from './newton.ts';
import { PRICE_STAGES, seamSprings } from './seam-springs.ts';
import { straightLines, type StraightLines } from './straight-lines.ts';
import { evenSlope, excesses, type EvenOut } from './triangle-cost.ts';

const NO_EDGES = new Uint32Array(0);

/** Cost of the seams, at their full price, from which their price is raised in stages, and the promise at which to go on to the next. */
const FAR_SEAMS = 0.01;
const STAGE_GAIN = 1e-3;

/**
 * From a shape without a flip to the one of least cost under all that was asked for.
 * @param near  where to begin; clear of itself where borders are to be kept apart.
 * @param look  see `minimise`.
 * @returns null where the start is crushed beyond what numbers can hold.
 */
export async function settle(
  patch: Patch,
  patchSystem: FlatSystem,
  near: Float64Array,
  options: FlattenOptions,
  work: Work,
  look?: Look,
): Promise<Minimum | null> {
  const { evenOut = false, quality = 'full' } = options;
  const lines = straightLines(patchSystem, options.straightRuns ?? [], near);
  const seeker = new Seeker(patch, lines?.system ?? patchSystem, options, lines);
  const begin = lines?.extend(near) ?? near;
  const enough = quality === 'first' ? FIRST_LOOK_GAIN : SETTLED_GAIN;
  const show: Look = (flat, steps) => look?.(flat.subarray(0, near.length), steps);
  const isEven = evenOut && quality === 'full';
  const mean = await seeker.seek(begin, PLAIN, isEven ? shareOfWork(work, 0, 0.4) : work, enough, show);
  const reached = isEven && mean !== null ? await evenedOut(seeker, mean, shareOfWork(work, 0.4, 1)) : mean;
  return reached === null ? null : { ...reached, flat: reached.flat.subarray(0, near.length) };
}

/** What changes from one stage to the next: how the triangles' cost is bent, and how much dearer seams are. */
interface Stage {
  readonly evenOut: EvenOut | null;
  readonly seamFactor: number;
}

const PLAIN: Stage = { evenOut: null, seamFactor: 1 };

/** Seeks the shape of least cost of one piece under its options, stage by stage. */
class Seeker {
  readonly system: FlatSystem;
  readonly squashPrice: number;
  readonly #patch: Patch;
  readonly #options: FlattenOptions;
  readonly #lines: StraightLines | null;
  readonly #weights: Float64Array;
  #room: NewtonRoom | null = null;

  constructor(patch: Patch, system: FlatSystem, options: FlattenOptions, lines: StraightLines | null) {
    this.#patch = patch;
    this.system = system;
    this.squashPrice = options.squashPrice ?? 1;
    this.#options = options;
    this.#lines = lines;
    this.#weights = stiffened(system.rest.weight, options.stiffness);
  }

  async seek(
    begin: Float64Array,
    stage: Stage,
    work: Work,
    enough = SETTLED_GAIN,
    look?: Look,
  ): Promise<Minimum | null> {
    if (this.#options.keepApart === true) {
      const problemAt = (system: FlatSystem): FlatProblem => this.#problemOver(system, stage);
      return minimiseApart(this.#patch, this.system, problemAt, begin, work, enough, look);
    }
    this.#room ??= new NewtonRoom(this.system.plan);
    const problem = this.#problemOver(this.system, stage);
    const reached = await this.#nearSeams(problem, begin, stage, shareOfWork(work, 0, 0.5));
    if (reached === null) return null;
    const last = await minimise(problem, reached.flat, shareOfWork(work, 0.5, 1), enough, look, this.#room);
    return last && { ...last, steps: reached.steps + last.steps };
  }

  /**
   * Where seams are far from their length, a stiff spring turns in small steps only (each straight step lengthens it): their price is
   * raised in stages, and each but the last is left when the shape is near its best.
   */
  async #nearSeams(
    { terms: [first] }: FlatProblem,
    begin: Float64Array,
    stage: Stage,
    work: Work,
  ): Promise<Pick<Minimum, 'flat' | 'steps'> | null> {
    let flat = begin;
    let steps = 0;
    const isFar = (this.#options.heldEdges?.length ?? 0) > 0 && first !== undefined && first.costOf(begin) > FAR_SEAMS;
    for (const share of isFar ? PRICE_STAGES : []) {
      const problem = this.#problemOver(this.system, { ...stage, seamFactor: share * stage.seamFactor });
      const next = await minimise(problem, flat, work, STAGE_GAIN, undefined, this.#room ?? undefined);
      if (next === null) return null;
      flat = next.flat;
      steps += next.steps + 1;
    }
    return { flat, steps };
  }

  /** @param system  the same triangles, perhaps over a plan with more entries. */
  #problemOver(system: FlatSystem, { evenOut, seamFactor }: Stage): FlatProblem {
    const { heldEdges = NO_EDGES, heldLengths, seamPrice = 0, grain } = this.#options;
    const terms = [
      seamSprings(heldEdges, seamFactor * seamPrice, system.rest.points, system.plan, heldLengths),
      grain === undefined ? null : grainThreads(system, grain),
      this.#lines?.termOver(system) ?? null,
    ].filter((term) => term !== null);
    return { system, cost: { weights: this.#weights, squashPrice: this.squashPrice, evenOut }, terms };
  }
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
async function evenedOut(seeker: Seeker, mean: Minimum, work: Work): Promise<Minimum> {
  const { rest } = seeker.system;
  const found = excesses(rest, seeker.squashPrice, mean.flat);
  const excess = found.reduce((sum, each, t) => sum + each * rest.weight[t], 0);
  if (!(excess > LEAST_EXCESS)) return mean;
  const bad = excessOfShare(found, rest.weight, SHARE_NOT_WORSE);
  let { flat, steps, converged } = mean;
  for (const [i, power] of EVEN_POWERS.entries()) {
    const part = shareOfWork(work, i / EVEN_POWERS.length, (i + 1) / EVEN_POWERS.length);
    const evenOut = { excess, power };
    const next = await seeker.seek(flat, { evenOut, seamFactor: evenSlope(evenOut, bad) }, part);
    if (next === null) return { flat, steps, converged: false };
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
