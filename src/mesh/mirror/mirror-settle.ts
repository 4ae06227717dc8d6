import type { Stepwise } from '../../base/stepwise.ts';
import type { Mesh } from '../mesh.ts';
import { planeOfPartners, vertexPartnerSteps, type CornerCells } from './mirror-partners.ts';
import type { MirrorPlane } from './mirror-plane.ts';

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
  mesh: Mesh,
  cells: CornerCells,
  start: MirrorPlane,
  tolerance: number,
): Stepwise<SettledPlane | null> {
  let plane = start;
  let ofVertex = yield* vertexPartnerSteps(mesh.positions, cells, plane, tolerance);
  for (let round = 0; round < ROUNDS; round += 1) {
    if (2 * pairedCount(ofVertex) < ofVertex.length) return null;
    const better = planeOfPartners(mesh.positions, ofVertex);
    if (better === null) return null;
    const next = yield* vertexPartnerSteps(mesh.positions, cells, better, tolerance);
    const isSettled = next.every((w, v) => w === ofVertex[v]);
    [plane, ofVertex] = [better, next];
    if (isSettled) break;
  }
  return { plane, ofVertex, pairedShare: pairedCount(ofVertex) / ofVertex.length };
}

/** How many have a partner. */
export const pairedCount = (partners: Int32Array): number => partners.reduce((count, w) => count + (w >= 0 ? 1 : 0), 0);
