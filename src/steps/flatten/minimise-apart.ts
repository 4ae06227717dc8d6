import { runWithPauses, type Stepwise } from '../../base/stepwise.ts';
import { shareOfWork, type Work } from '../../base/work.ts';
import { graphOfPairs } from '../../geom/sparse-graph.ts';
import { halvingSteps } from '../../geom/sparse-halving.ts';
import { planSteps } from '../../geom/sparse-plan.ts';
import type { Patch } from '../../model/patch.ts';
import { borderPairs } from './border-pairs.ts';
import { findSlots, type FlatSystem } from './flat-system.ts';
import { apartTerm } from './keep-apart.ts';
import { NearBorders } from './near-borders.ts';
import { minimise, SETTLED_GAIN, type FlatProblem, type Look, type Minimum } from './newton.ts';

/** Promises at which to stop and look anew which borders have come near each other, before the last round. */
const LOOKS = [1e-2, 1e-4, 1e-6];

/** By so many mean edges borders may slide along each other before the next look. */
const SLIDE_EDGES = 3;

/**
 * Newton's method with the borders of a piece kept apart. Where borders lie along each other, what they do to each other has to be in
 * the matrix, or each step that slides them is held back: so the plan is made anew now and then, with room for the pairs that are near.
 * @param problemAt  the problem over a system of the same triangles and another plan, without the barrier.
 * @param start      a shape without a flip whose borders are clear of each other.
 * @param enough     promise at which to stop, as for `minimise`; so is `look`.
 * @returns null as `minimise` does.
 */
export async function minimiseApart(
  patch: Patch,
  system: FlatSystem,
  problemAt: (system: FlatSystem) => FlatProblem,
  start: Float64Array,
  work: Work,
  enough = SETTLED_GAIN,
  look?: Look,
): Promise<Minimum | null> {
  const borders = new NearBorders(borderPairs(patch, system.rest));
  const stops = [...LOOKS.filter((gain) => gain > enough), enough];
  let reached: Minimum = { flat: start, steps: 0, converged: false };
  for (const [round, stop] of stops.entries()) {
    const { flat, steps } = reached;
    const share = shareOfWork(work, round / stops.length, (round + 1) / stops.length);
    const near = borders.pairsNear(flat, SLIDE_EDGES);
    const joined =
      near.length === 0 ? system : await runWithPauses(joinedSystem(system, near, flat), () => share.pause(0));
    const problem = problemAt(joined);
    const terms = [...problem.terms, apartTerm(borders, joined)];
    const isLast = round === stops.length - 1;
    const next = await minimise({ ...problem, terms }, flat, share, stop, isLast ? look : undefined);
    if (next === null) return null;
    reached = { ...next, steps: steps + next.steps };
  }
  return reached;
}

/** The same triangles over a plan in which the given pairs of vertices (v w  v w …) meet as well, ordered by where they lie now. */
function* joinedSystem(
  { rest, plan }: FlatSystem,
  more: readonly number[],
  flat: Float64Array,
): Stepwise<FlatSystem> {
  const pairs = [...more];
  for (let c = 0; c < plan.size; c += 1) {
    for (let p = plan.entryStarts[c] + 1; p < plan.entryStarts[c + 1]; p += 1) {
      pairs.push(plan.blocks.order[c], plan.blocks.order[plan.entryRows[p]]);
    }
  }
  yield;
  const graph = graphOfPairs(plan.size, pairs);
  const points = new Float64Array(3 * rest.vertexCount);
  for (let v = 0; v < rest.vertexCount; v += 1) {
    points[3 * v] = flat[2 * v];
    points[3 * v + 1] = flat[2 * v + 1];
  }
  const order = yield* halvingSteps(graph, points);
  const joined = yield* planSteps(graph, order);
  return { rest, plan: joined, slots: findSlots(joined, rest.corners) };
}
