import type { Stepwise } from '../../base/stepwise.ts';
import { pointAt3 } from '../../geom/vec.ts';
import { planeOfPartners, vertexPartnerSteps, type CornerCells } from './mirror-partners.ts';
import { reflect, type MirrorPlane } from './mirror-plane.ts';

/** A plane that mirrors corners onto corners. */
export interface SettledPlane {
  readonly plane: MirrorPlane;
  readonly ofVertex: Int32Array;
  /** Share of the corners that have partners, 0.5 to 1. */
  readonly pairedShare: number;
}

/** Most rounds: the partners of an exact mirror do not change any more after the first. */
const ROUNDS = 3;

/** Draws a plane to where the corners say, as long as enough of them have partners; null where too few have. */
export function* settledOnPartners(
  positions: Float64Array,
  cells: CornerCells,
  start: MirrorPlane,
  tolerance: number,
): Stepwise<SettledPlane | null> {
  if (!hasPartners(positions, cells, start, tolerance)) return null;
  let plane = start;
  let ofVertex = yield* vertexPartnerSteps(positions, cells, plane, tolerance);
  for (let round = 0; round < ROUNDS; round += 1) {
    if (2 * pairedCount(ofVertex) < ofVertex.length) return null;
    const better = planeOfPartners(positions, ofVertex);
    if (better === null) return null;
    const next = yield* vertexPartnerSteps(positions, cells, better, tolerance);
    const isSettled = next.every((w, v) => w === ofVertex[v]);
    [plane, ofVertex] = [better, next];
    if (isSettled) break;
  }
  return { plane, ofVertex, pairedShare: pairedCount(ofVertex) / ofVertex.length };
}

/** Corners asked before all are. */
const ASKED = 200;

/** Whether so many corners have another near their mirror image that it pays to ask all. */
function hasPartners(positions: Float64Array, cells: CornerCells, plane: MirrorPlane, tolerance: number): boolean {
  const count = positions.length / 3;
  const stride = Math.max(1, Math.floor(count / ASKED));
  let [near, asked] = [0, 0];
  for (let v = 0; v < count; v += stride, asked += 1)
    if (cells.nearest(reflect(plane, pointAt3(positions, v)), tolerance) >= 0) near += 1;
  return 3 * near >= asked;
}

/** How many have a partner. */
export const pairedCount = (partners: Int32Array): number => partners.reduce((count, w) => count + (w >= 0 ? 1 : 0), 0);
