import { SparseFactor } from '../../geom/sparse-factor.ts';
import { graphOfTriangles } from '../../geom/sparse-graph.ts';
import { planFactor } from '../../geom/sparse-plan.ts';
import { surfaceArea } from '../../mesh/measure.ts';
import type { Patch } from '../../model/patch.ts';
import { energyOf } from './dirichlet-energy.ts';
import { findSlots, type FlatSystem } from './flat-system.ts';
import type { FlattenOptions } from './flatten-options.ts';
import { hasFlip, stepToFirstFlip } from './flips.ts';
import type { FlatProblem } from './newton.ts';
import { restShapes } from './rest-shapes.ts';
import { addRigidSprings, addTurnedTriangles } from './rigid-springs.ts';
import { PRICE_STAGES, seamSprings } from './seam-springs.ts';
import { addUpDerivatives, costOfTriangles, type TriangleCost } from './triangle-cost.ts';

/** What of the wishes for the whole patch bears on a part of it; see `FlattenOptions`. */
export type PartWishes = Pick<FlattenOptions, 'heldEdges' | 'seamPrice' | 'squashPrice'>;

const NO_EDGES = new Uint32Array(0);

/** Rings around the loose vertices that may give way, one try after the other. */
const RINGS = [6, 12, 24];
/** Rounds of local-global in one try. */
const MOST_ROUNDS = 16;
/** A round that lowers the energy by less than this share is the last. */
const WORTH_A_ROUND = 0.01;
/** Newton steps at the end of one try, and the least share of one and gain in energy that are worth taking. */
const MOST_DESCENTS = 8;
const LEAST_STEP = 1e-3;
const WORTH_A_DESCENT = 1e-7;
/** The same while the price of seams is still to rise: what is left is found again at the next price. */
const WORTH_IN_STAGE = 1e-3;
/** Share of the way to the first flip that a step may go. */
const BARRIER_SHARE = 0.9;
/** Triangles from which a part that is most of its patch is not worth relaxing: the ordinary start is as quick and knows the whole. */
const MANY_TRIANGLES = 2000;
const MOST_SHARE = 0.5;
/** Pull of a vertex that is to stay, beside its springs: it moves by about the inverse of this share. */
const HELD = 1e7;
/** Energy of a part, 4 being true size, from which more rings are tried to bring it down. */
const CRUSHED = 6;

/**
 * Relaxes a flat shape round its loose vertices: a few rounds of "as rigid as possible" (Liu et al. 2008) on the triangles around them,
 * all else being held, on more and more rings until no triangle is turned over or crushed.
 * @param flat   x y per local vertex, mm; no triangle without a loose corner is turned over.
 * @param loose  1 for each vertex whose place is only a guess.
 * @param wishes what the whole patch is asked for: the part is brought near the best under it.
 * @returns a shape without a flip, `flat` itself where nothing is loose; null where none was found.
 */
export function relaxPart(
  patch: Patch,
  positions: Float64Array,
  flat: Float64Array,
  loose: Uint8Array,
  wishes: PartWishes = {},
): Float64Array | null {
  let best = hasFlip(patch.triangles, flat) ? null : flat;
  if (!loose.includes(1)) return best;
  const free = loose.slice();
  let rings = 0;
  for (const wanted of RINGS) {
    for (; rings < wanted; rings += 1) growByRing(patch.triangles, free);
    const part = partOf(patch, free);
    const count = part.patch.meshTriangles.length;
    if (count > MANY_TRIANGLES && count > MOST_SHARE * patch.meshTriangles.length) return best;
    const relaxed = relax(part, positions, best ?? flat, wishes, patch);
    if (relaxed === null) continue;
    best = relaxed.flat;
    if (relaxed.energy < CRUSHED) break;
  }
  return best;
}

/** Adds all corners of triangles that touch the set. */
function growByRing(triangles: Uint32Array, set: Uint8Array): void {
  const before = set.slice();
  for (let t = 0; t < triangles.length; t += 3) {
    if (before[triangles[t]] + before[triangles[t + 1]] + before[triangles[t + 2]] === 0) continue;
    for (let k = 0; k < 3; k += 1) set[triangles[t + k]] = 1;
  }
}

/** The triangles that touch a free vertex, as a patch of their own. */
interface Part {
  readonly patch: Patch;
  /** For each vertex of the part its local vertex in the whole patch. */
  readonly localVertices: Uint32Array;
  /** 1 for a vertex of the part that may move. */
  readonly free: Uint8Array;
}

function partOf(patch: Patch, free: Uint8Array): Part {
  const { triangles } = patch;
  const inPart = new Int32Array(free.length).fill(-1);
  const localVertices: number[] = [];
  const corners: number[] = [];
  const meshTriangles: number[] = [];
  for (let t = 0; t < triangles.length; t += 3) {
    if (free[triangles[t]] + free[triangles[t + 1]] + free[triangles[t + 2]] === 0) continue;
    meshTriangles.push(patch.meshTriangles[t / 3]);
    for (let k = 0; k < 3; k += 1) {
      const v = triangles[t + k];
      if (inPart[v] < 0) {
        inPart[v] = localVertices.length;
        localVertices.push(v);
      }
      corners.push(inPart[v]);
    }
  }
  return {
    patch: {
      ...patch,
      meshTriangles: Uint32Array.from(meshTriangles),
      triangles: Uint32Array.from(corners),
      meshVertices: Uint32Array.from(localVertices, (v) => patch.meshVertices[v]),
    },
    localVertices: Uint32Array.from(localVertices),
    free: Uint8Array.from(localVertices, (v) => free[v]),
  };
}

/** The best shape without a flip that was found for the part, and its mean energy; null where none had no flip. */
function relax(
  part: Part,
  positions: Float64Array,
  whole: Float64Array,
  wishes: PartWishes,
  wholePatch: Patch,
): { flat: Float64Array; energy: number } | null {
  const { patch, localVertices } = part;
  const rest = restShapes(patch, positions);
  const plan = planFactor(graphOfTriangles(rest.vertexCount, patch.triangles));
  const system: FlatSystem = { rest, plan, slots: findSlots(plan, rest.corners) };
  const start = new Float64Array(2 * rest.vertexCount);
  for (let i = 0; i < localVertices.length; i += 1) {
    start[2 * i] = whole[2 * localVertices[i]];
    start[2 * i + 1] = whole[2 * localVertices[i] + 1];
  }
  const near = asRigidAsPossible(part, system, start);
  if (near === null) return null;
  const best = descendUnder(part, system, near, pricedSeams(part, system, wishes, wholePatch, positions), wishes);
  const flat = whole.slice();
  for (let i = 0; i < localVertices.length; i += 1) {
    flat[2 * localVertices[i]] = best[2 * i];
    flat[2 * localVertices[i] + 1] = best[2 * i + 1];
  }
  return { flat, energy: energyOf(rest, best) };
}

/** Rounds of local-global until there is no flip and little to gain; null where flips remain. */
function asRigidAsPossible({ patch, free }: Part, system: FlatSystem, start: Float64Array): Float64Array | null {
  const { rest, plan } = system;
  const factor = new SparseFactor(plan, 1);
  addRigidSprings(system, factor.values);
  const pulls = hold(system, free, factor.values, 1);
  if (!factor.factor()) return null;
  let best = hasFlip(patch.triangles, start) ? null : start;
  let least = best === null ? Infinity : energyOf(rest, start);
  let now = start;
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const next = new Float64Array(start.length);
    addTurnedTriangles(rest, now, next);
    for (let i = 0; i < next.length; i += 1) next[i] += pulls[i >> 1] * start[i];
    factor.solve(next);
    for (let i = 0; i < next.length; i += 1) if (free[i >> 1] === 0) next[i] = start[i];
    now = next;
    if (hasFlip(patch.triangles, now)) continue;
    const energy = energyOf(rest, now);
    const isLast = energy > (1 - WORTH_A_ROUND) * least;
    if (energy < least) [best, least] = [now, energy];
    if (isLast) break;
  }
  return best;
}

/** Held edges of the whole patch with both ends in the part, and the price that makes them as dear beside the part as beside the whole. */
interface PricedSeams {
  readonly edges: Uint32Array;
  readonly price: number;
}

function pricedSeams(
  { patch, localVertices }: Part,
  { rest }: FlatSystem,
  { heldEdges = NO_EDGES, seamPrice = 0 }: PartWishes,
  whole: Patch,
  positions: Float64Array,
): PricedSeams {
  const inPart = new Map(Array.from(localVertices, (v, i) => [v, i]));
  const lengthOf = (v: number, w: number): number => {
    const [a, b] = [3 * whole.meshVertices[v], 3 * whole.meshVertices[w]];
    return Math.hypot(
      positions[b] - positions[a],
      positions[b + 1] - positions[a + 1],
      positions[b + 2] - positions[a + 2],
    );
  };
  const edges: number[] = [];
  let [own, all] = [0, 0];
  for (let i = 0; i < heldEdges.length; i += 2) {
    const [v, w] = [heldEdges[i], heldEdges[i + 1]];
    const length = lengthOf(v, w);
    all += length;
    const [a, b] = [inPart.get(v), inPart.get(w)];
    if (a === undefined || b === undefined || !isSide(patch, a, b)) continue;
    edges.push(a, b);
    own += length;
  }
  const shareOfArea = rest.totalArea / areaOf(whole, positions);
  return { edges: Uint32Array.from(edges), price: all > 0 ? (seamPrice * own) / all / shareOfArea : 0 };
}

/** Newton steps on the part's cost, the price of seams raised in stages: what is left for the whole patch is then smooth. */
function descendUnder(
  part: Part,
  system: FlatSystem,
  start: Float64Array,
  { edges, price }: PricedSeams,
  { squashPrice = 1 }: PartWishes,
): Float64Array {
  const cost: TriangleCost = { weights: system.rest.weight, squashPrice, evenOut: null };
  const factor = new SparseFactor(system.plan, 2);
  let flat = start;
  for (const share of price > 0 && edges.length > 0 ? [...PRICE_STAGES, 1] : [0]) {
    const springs = seamSprings(edges, share * price, system.rest.points, system.plan);
    const problem = { system, cost, terms: springs === null ? [] : [springs] };
    flat = descend(part, problem, factor, flat, PRICE_STAGES.includes(share) ? WORTH_IN_STAGE : WORTH_A_DESCENT);
  }
  return flat;
}

/** @param worth  gain in energy below which a step is the last. */
function descend(
  { patch, free }: Part,
  problem: FlatProblem,
  factor: SparseFactor,
  start: Float64Array,
  worth: number,
): Float64Array {
  const { system, cost, terms } = problem;
  const { rest } = system;
  const costOf = (shape: Float64Array): number =>
    terms.reduce((sum, term) => sum + term.costOf(shape), costOfTriangles(rest, cost, shape));
  const step = new Float64Array(start.length);
  let flat = start;
  let energy = costOf(flat);
  for (let steps = 0; steps < MOST_DESCENTS; steps += 1) {
    addUpDerivatives(system, cost, flat, step, factor.values, 0);
    for (const term of terms) term.addDerivatives(flat, step, factor.values, false);
    hold(system, free, factor.values, 2);
    for (let i = 0; i < step.length; i += 1) step[i] = free[i >> 1] === 0 ? 0 : -step[i];
    if (!factor.factor()) return flat;
    factor.solve(step);
    for (let i = 0; i < step.length; i += 1) if (free[i >> 1] === 0) step[i] = 0;
    let share = Math.min(1, BARRIER_SHARE * stepToFirstFlip(rest.corners, flat, step));
    let next = flat;
    let reached = Infinity;
    for (; share > LEAST_STEP && !(reached < energy); share /= 2) {
      next = flat.map((x, i) => x + share * step[i]);
      reached = hasFlip(patch.triangles, next) ? Infinity : costOf(next);
    }
    if (!(reached < energy)) return flat;
    const gain = energy - reached;
    [flat, energy] = [next, reached];
    if (gain < worth) return flat;
  }
  return flat;
}

/**
 * Adds a strong pull on each vertex that is to stay to the diagonal of a matrix.
 * @param each  numbers on the side of an entry.
 * @returns the pull on each vertex, 0 where it is free.
 */
function hold({ plan }: FlatSystem, free: Uint8Array, values: Float64Array, each: 1 | 2): Float64Array {
  const pulls = new Float64Array(plan.size);
  for (let c = 0; c < plan.size; c += 1) {
    const v = plan.blocks.order[c];
    if (free[v] === 1) continue;
    const at = each * each * plan.entryStarts[c];
    pulls[v] = HELD * (values[at] + values[at + each * each - 1]);
    values[at] += pulls[v];
    if (each === 2) values[at + 3] += pulls[v];
  }
  return pulls;
}

/** True where a triangle of the patch has a side between the two. */
function isSide({ triangles }: Patch, v: number, w: number): boolean {
  for (let h = 0; h < triangles.length; h += 1) {
    const next = h % 3 === 2 ? h - 2 : h + 1;
    if ((triangles[h] === v && triangles[next] === w) || (triangles[h] === w && triangles[next] === v)) return true;
  }
  return false;
}

/** Area of a patch on the surface, mm². */
const areaOf = ({ triangles, meshVertices }: Patch, positions: Float64Array): number =>
  surfaceArea(
    positions,
    triangles.map((v) => meshVertices[v]),
  );
