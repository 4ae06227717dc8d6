import { clipPlaces, type Finding } from '../../base/finding.ts';
import type { Stepwise } from '../../base/stepwise.ts';
import { doTrianglesCross } from '../../geom/triangle-crossing.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { shareVertex } from '../../mesh/share-vertex.ts';
import { surfaceTreeOf } from '../../mesh/surface-tree.ts';
import { joiningDistance } from './joining-distance.ts';
import { several } from './wording.ts';

/** After this many crossings the sculpt is known to be tangled; more would only take time. */
const MOST_CROSSINGS = 5000;

/** How many triangles are tested against each other, and how many boxes compared, at most: a few seconds of work. */
const MOST_TESTS = 3_000_000;
const MOST_BOXES = 40_000_000;

/** Where a surface runs through itself. */
export interface SelfCrossings {
  /** Pairs of triangles. */
  readonly pairs: number;
  /** Those in them, ascending. */
  readonly triangles: readonly number[];
  /** False where the search was stopped: there may be more. */
  readonly isWhole: boolean;
}

/** Looks for triangles that run through each other or lie on each other. Those that share a vertex are neighbours and are not tested. */
export function* crossingSteps(mesh: Mesh): Stepwise<SelfCrossings> {
  const { positions, triangles } = mesh;
  const tolerance = joiningDistance(positions).distance;
  const crossing = new Set<number>();
  let [pairs, tests] = [0, 0];
  const tree = surfaceTreeOf(mesh);
  yield;
  const isWhole = yield* tree.pairSteps((t, u) => {
    if (shareVertex(triangles, t, u)) return false;
    tests += 1;
    if (doTrianglesCross(positions, triangles, t, u, tolerance)) {
      pairs += 1;
      crossing.add(t).add(u);
    }
    return pairs >= MOST_CROSSINGS || tests >= MOST_TESTS;
  }, MOST_BOXES);
  return { pairs, triangles: [...crossing].sort((a, b) => a - b), isWhole };
}

/** What is told of them. */
export function* selfCrossingSteps(mesh: Mesh): Stepwise<Finding[]> {
  const { pairs, triangles, isWhole } = yield* crossingSteps(mesh);
  const where = { triangles: clipPlaces(triangles) };
  if (pairs === 0) return isWhole ? [] : [notSearched()];
  const count = several(pairs, 'pair of triangles runs', 'pairs of triangles run');
  return [
    {
      code: 'read/self-crossing',
      severity: 'warning',
      text: `${isWhole ? count : `At least ${count}`} through each other or ${pairs === 1 ? 'lies' : 'lie'} on each other${isWhole ? '' : ', and the search stopped there'}: foam cannot, so part the surfaces in your modelling program.`,
      value: pairs,
      where,
    },
  ];
}

const notSearched = (): Finding => ({
  code: 'read/crossing-unknown',
  severity: 'note',
  text: 'So many triangles crowd together that the search for places where the sculpt runs through itself was stopped: look it over yourself.',
  where: {},
});
