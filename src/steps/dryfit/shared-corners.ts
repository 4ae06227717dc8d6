import { length3, sub3 } from '../../geom/vec.ts';
import type { CornerFit } from '../../model/dry-fit.ts';
import { cornerWedge, depthInEachOther, type CornerWedge } from './corner-wedge.ts';
import { cornersByVertex, haveSeamInCommon, type PieceCorner } from './piece-corners.ts';
import type { SeamEnd } from './seam-ends.ts';

/** Where more corners than this come together no foam is left of their tips, and they are not compared. */
export const MOST_CORNERS = 64;

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
        const overlapMm = depthInEachOther(...wedgesOf(a, b));
        if (overlapMm > 0) found.push(cornerFit(a, b, overlapMm));
      }
    });
  }
  return found.sort((p, q) => q.overlapMm - p.overlapMm);
}

/** The foam of two corners. Beyond the shortest of the cuts beside them nothing is known of the pieces. */
export function wedgesOf(a: PieceCorner, b: PieceCorner): readonly [CornerWedge, CornerWedge] {
  const reachMm = Math.min(
    ...[a.arriving, a.leaving, b.arriving, b.leaving].map(({ corner, next }) => length3(sub3(next.face, corner.face))),
  );
  return [cornerWedge(a.arriving, a.leaving, reachMm), cornerWedge(b.arriving, b.leaving, reachMm)];
}

function cornerFit({ arriving: a }: PieceCorner, { arriving: b }: PieceCorner, overlapMm: number): CornerFit {
  const { x, y, z } = a.corner.face;
  return { pieces: [a.piece, b.piece], names: [a.pieceName, b.pieceName], vertex: a.vertex, overlapMm, at: [x, y, z] };
}
