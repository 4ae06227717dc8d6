import { SparseFactor } from '../../geom/sparse-factor.ts';
import { graphOfTriangles } from '../../geom/sparse-graph.ts';
import { planFactor } from '../../geom/sparse-plan.ts';
import type { Patch } from '../../model/patch.ts';
import { energyOf } from './dirichlet-energy.ts';
import { findSlots, type FlatSystem } from './flat-system.ts';
import { hasFlip, stepToFirstFlip } from './flips.ts';
import { restShapes } from './rest-shapes.ts';
import { addRigidSprings, addTurnedTriangles } from './rigid-springs.ts';
import { addUpDerivatives, type TriangleCost } from './triangle-cost.ts';

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
 * @returns a shape without a flip, `flat` itself where nothing is loose; null where none was found.
 */
export function relaxPart(
  patch: Patch,
  positions: Float64Array,
  flat: Float64Array,
  loose: Uint8Array,
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
    const relaxed = relax(part, positions, best ?? flat);
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
  const best = descend(part, system, near);
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

/** Newton steps on the symmetric Dirichlet energy of the part: what is left for the whole patch is then smooth. */
function descend({ patch, free }: Part, system: FlatSystem, start: Float64Array): Float64Array {
  const { rest, plan } = system;
  const factor = new SparseFactor(plan, 2);
  const cost: TriangleCost = { weights: rest.weight, squashPrice: 1, evenOut: null };
  const step = new Float64Array(start.length);
  let flat = start;
  let energy = energyOf(rest, flat);
  for (let steps = 0; steps < MOST_DESCENTS; steps += 1) {
    addUpDerivatives(system, cost, flat, step, factor.values, 0);
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
      reached = hasFlip(patch.triangles, next) ? Infinity : energyOf(rest, next);
    }
    if (!(reached < energy)) return flat;
    const gain = energy - reached;
    [flat, energy] = [next, reached];
    if (gain < WORTH_A_DESCENT) return flat;
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
