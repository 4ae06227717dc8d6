import { runAtOnce, runWithPauses, type Stepwise } from '../../base/stepwise.ts';
import type { SparseGraph } from '../../geom/sparse-graph.ts';
import { halvingSteps } from '../../geom/sparse-halving.ts';
import { entryBetween, planSteps, type FactorPlan } from '../../geom/sparse-plan.ts';
import type { Patch } from '../../model/patch.ts';
import type { RestShapes } from './rest-shapes.ts';

/** A patch ready for solving: its triangles, the plan of the matrices over its vertices, and where each triangle's numbers go in them. */
export interface FlatSystem {
  readonly rest: RestShapes;
  readonly plan: FactorPlan;
  /** See {@link findSlots}. */
  readonly slots: Int32Array;
}

const known = new WeakMap<Patch, FactorPlan>();

/**
 * The plan of a patch depends on who touches whom alone: it is kept as long as the patch lives, so that another surface of the same
 * patch (a new thickness) starts at once.
 * @param graph  which vertices of the patch are joined by a side.
 */
export function flatSystem(patch: Patch, rest: RestShapes, graph: SparseGraph): FlatSystem {
  return runAtOnce(flatSystemSteps(patch, rest, graph));
}

/**
 * The same for a patch of any size.
 * @param pause  called every few milliseconds and awaited; throws to call the job off.
 */
export function flatSystemWithPauses(
  patch: Patch,
  rest: RestShapes,
  graph: SparseGraph,
  pause: () => Promise<void> | undefined,
): Promise<FlatSystem> {
  return runWithPauses(flatSystemSteps(patch, rest, graph), pause);
}

function* flatSystemSteps(patch: Patch, rest: RestShapes, graph: SparseGraph): Stepwise<FlatSystem> {
  let plan = known.get(patch);
  if (plan === undefined) {
    const order = yield* halvingSteps(graph, rest.points);
    plan = yield* planSteps(graph, order);
    known.set(patch, plan);
  }
  const slots = new Int32Array(2 * rest.corners.length);
  for (let t = 0; t < rest.count; t += PAUSE_TRIANGLES) {
    fillSlots(plan, rest.corners, slots, t, Math.min(rest.count, t + PAUSE_TRIANGLES));
    yield;
  }
  return { rest, plan, slots };
}

/** Triangles whose entries are looked up between two pauses: a few milliseconds. */
const PAUSE_TRIANGLES = 20_000;

/**
 * Where each triangle's numbers go in the matrix: per triangle the entries of its three corners, then of the sides c1-c0, c2-c0, c2-c1.
 * A side's entry is doubled, plus 1 where its first end is the column, not the row.
 */
export function findSlots(plan: FactorPlan, corners: Uint32Array): Int32Array {
  const slots = new Int32Array(2 * corners.length);
  fillSlots(plan, corners, slots, 0, corners.length / 3);
  return slots;
}

/** Those of triangles `from .. to`. */
function fillSlots(plan: FactorPlan, corners: Uint32Array, slots: Int32Array, from: number, to: number): void {
  const { place } = plan.blocks;
  for (let t = 3 * from; t < 3 * to; t += 3) {
    const c0 = corners[t];
    const c1 = corners[t + 1];
    const c2 = corners[t + 2];
    slots[2 * t] = entryBetween(plan, c0, c0);
    slots[2 * t + 1] = entryBetween(plan, c1, c1);
    slots[2 * t + 2] = entryBetween(plan, c2, c2);
    slots[2 * t + 3] = 2 * entryBetween(plan, c1, c0) + (place[c1] > place[c0] ? 0 : 1);
    slots[2 * t + 4] = 2 * entryBetween(plan, c2, c0) + (place[c2] > place[c0] ? 0 : 1);
    slots[2 * t + 5] = 2 * entryBetween(plan, c2, c1) + (place[c2] > place[c1] ? 0 : 1);
  }
}
