import { length3, sub3 } from '../../geom/vec.ts';
import type { CornerFit } from '../../model/dry-fit.ts';
import { cornerWedge, depthInEachOther } from './corner-wedge.ts';
import type { SeamEnd } from './seam-ends.ts';

/** A corner of a piece with both its edges. */
interface PieceCorner {
  readonly arriving: SeamEnd;
  readonly leaving: SeamEnd;
}

/** Where more corners than this come together no foam is left of their tips, and they are not compared. */
const MOST_CORNERS = 64;

/**
 * Corners that meet at one place of the sculpt and share no seam there: nothing else tells whether one piece is in the way of the other.
 * Corners beside an open edge, a lap or a rebate are passed over.
 * @returns one for each two corners of foam that run into each other, the deepest first.
 */
export function sharedCorners(ends: readonly SeamEnd[]): readonly CornerFit[] {
  const found: CornerFit[] = [];
  for (const corners of cornersByVertex(ends).values()) {
    if (corners.length > MOST_CORNERS) continue;
    corners.forEach((a, i) => {
      for (const b of corners.slice(i + 1)) {
        if (haveSeamInCommon(a, b)) continue;
        const overlapMm = overlapOf(a, b);
        if (overlapMm > 0) found.push(cornerFit(a, b, overlapMm));
      }
    });
  }
  return found.sort((p, q) => q.overlapMm - p.overlapMm);
}

function cornersByVertex(ends: readonly SeamEnd[]): ReadonlyMap<number, readonly PieceCorner[]> {
  const halves = new Map<string, [SeamEnd?, SeamEnd?]>();
  for (const end of ends) {
    const key = `${end.piece} ${end.ring} ${end.at}`;
    const pair = halves.get(key) ?? [];
    pair[end.isArriving ? 0 : 1] = end;
    halves.set(key, pair);
  }
  const byVertex = new Map<number, PieceCorner[]>();
  for (const [arriving, leaving] of halves.values()) {
    if (arriving === undefined || leaving === undefined) continue;
    const list = byVertex.get(arriving.vertex);
    if (list === undefined) byVertex.set(arriving.vertex, [{ arriving, leaving }]);
    else list.push({ arriving, leaving });
  }
  return byVertex;
}

const haveSeamInCommon = (a: PieceCorner, b: PieceCorner): boolean => {
  const own = [a.arriving.seam, a.leaving.seam];
  return own.includes(b.arriving.seam) || own.includes(b.leaving.seam);
};

/** Beyond the shortest of the cuts beside a corner nothing is known of the pieces. */
function overlapOf(a: PieceCorner, b: PieceCorner): number {
  const reachMm = Math.min(
    ...[a.arriving, a.leaving, b.arriving, b.leaving].map(({ corner, next }) => length3(sub3(next.face, corner.face))),
  );
  const [first, second] = [a, b].map(({ arriving, leaving }) => cornerWedge(arriving, leaving, reachMm));
  return depthInEachOther(first, second);
}

function cornerFit({ arriving: a }: PieceCorner, { arriving: b }: PieceCorner, overlapMm: number): CornerFit {
  const { x, y, z } = a.corner.face;
  return { pieces: [a.piece, b.piece], names: [a.pieceName, b.pieceName], vertex: a.vertex, overlapMm, at: [x, y, z] };
}
