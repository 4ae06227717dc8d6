import { overlappingTriangles } from '../../geom/overlap.ts';
import { ringOfPoints } from '../../geom/ring.ts';
import { isSimpleArea } from '../../geom/ring-simple.ts';
import type { FlatPiece } from '../../model/flat-piece.ts';
import type { Patch } from '../../model/patch.ts';

/** Pairs of overlapping triangles listed at most; the piece is refused by the eye long before. */
const MOST_OVERLAPS = 1000;

/**
 * Where a flat shape without a flip lies on itself.
 *
 * Without a flip, as many triangles cover a point as its border winds round it. So a border that is simple, the outer loop
 * counter-clockwise and windows clockwise, leaves nothing to look for.
 */
export function overlapsOf(patch: Patch, uv: Float64Array): Pick<FlatPiece, 'overlaps' | 'overlapCount'> {
  if (isSimpleArea(patch.loops.map((loop) => ringOfPoints(uv, loop)))) return { overlaps: [], overlapCount: 0 };
  const { pairs, count } = overlappingTriangles(uv, patch.triangles, MOST_OVERLAPS);
  return { overlaps: pairs, overlapCount: count };
}
