import type { Box2 } from '../../geom/ring.ts';
import { neighbourOf, SIDES, tileBox, type Lattice } from './lattice.ts';

/** Words keep this far from a joint, mm: they stay whole when the neighbour is laid over it, and clear of its ticks and crosses. */
const JOINT_CLEAR_MM = 3;

/** What of a tile can be seen once its printed neighbours lie over it or beside it, less the clear strip at each joint. */
export function visibleCell(lattice: Lattice, isPrinted: readonly boolean[], tile: number): Box2 {
  const box = tileBox(lattice, tile);
  const [left, right, below, above] = SIDES.map((side) => isPrinted[neighbourOf(lattice, tile, side)] === true);
  return {
    minX: box.minX + (left ? JOINT_CLEAR_MM : 0),
    maxX: right ? box.minX + lattice.stepXMm - JOINT_CLEAR_MM : box.maxX,
    minY: box.minY + (below ? JOINT_CLEAR_MM : 0),
    maxY: above ? box.minY + lattice.stepYMm - JOINT_CLEAR_MM : box.maxY,
  };
}
