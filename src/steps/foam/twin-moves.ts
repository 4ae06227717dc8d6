import type { Move2 } from '../../geom/turn-and-move.ts';
import type { Vec2 } from '../../geom/vec.ts';
import type { Patch } from '../../model/patch.ts';
import type { Twin } from './mirror-twins.ts';
import type { PieceShape } from './piece-shape.ts';

/**
 * Per patch how its flat piece comes to lie on its twin's: first x is turned round, then it is moved (`FoamPiece.twinMove`). The move under which
 * the corners of both borders lie nearest to each other, by least squares (Kabsch 1976, in the plane).
 * @returns null without a twin, and where both have no corner that stands for one place alone, as along a slit.
 */
export function twinMoves(
  patches: readonly Patch[],
  shapes: readonly (PieceShape | null)[],
  twins: readonly (Twin | null)[],
): readonly (Move2 | null)[] {
  const corners = patches.map((patch, i) => cornersOf(patch, shapes[i]));
  return twins.map((twin, i) => {
    if (twin === null) return null;
    const pairs = [...corners[i]].flatMap(([v, p]) => {
      const q = corners[twin.patch].get(twin.partners.get(v) ?? -1);
      return p === null || q === undefined || q === null ? [] : [[{ x: -p.x, y: p.y }, q] as const];
    });
    return pairs.length < 2 ? null : nearestMove(pairs);
  });
}

/** Places in the flat piece of the vertices of the mesh round a patch; null for one that has several. */
function cornersOf({ loops, meshVertices }: Patch, shape: PieceShape | null): ReadonlyMap<number, Vec2 | null> {
  const corners = new Map<number, Vec2 | null>();
  if (shape === null) return corners;
  for (const local of loops.flatMap((loop) => [...loop])) {
    const v = meshVertices[local];
    corners.set(v, corners.has(v) ? null : { x: shape.uv[2 * local], y: shape.uv[2 * local + 1] });
  }
  return corners;
}

function nearestMove(pairs: readonly (readonly [Vec2, Vec2])[]): Move2 {
  const middle = (which: 0 | 1): Vec2 => ({
    x: pairs.reduce((sum, pair) => sum + pair[which].x, 0) / pairs.length,
    y: pairs.reduce((sum, pair) => sum + pair[which].y, 0) / pairs.length,
  });
  const [from, to] = [middle(0), middle(1)];
  let [along, aside] = [0, 0];
  for (const [p, q] of pairs) {
    const [px, py, qx, qy] = [p.x - from.x, p.y - from.y, q.x - to.x, q.y - to.y];
    along += px * qx + py * qy;
    aside += px * qy - py * qx;
  }
  const turnRad = Math.atan2(aside, along);
  const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
  return { x: to.x - c * from.x + s * from.y, y: to.y - s * from.x - c * from.y, turnRad };
}
