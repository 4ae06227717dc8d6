import type { SeamEnd } from './seam-ends.ts';

/** A corner of a piece with both its edges. */
export interface PieceCorner {
  readonly arriving: SeamEnd;
  readonly leaving: SeamEnd;
}

/** Corners by the vertex of the sculpt they meet at. Those beside an open edge, a lap or a rebate are left out. */
export function cornersByVertex(ends: readonly SeamEnd[]): ReadonlyMap<number, readonly PieceCorner[]> {
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

export const haveSeamInCommon = (a: PieceCorner, b: PieceCorner): boolean => {
  const own = [a.arriving.seam, a.leaving.seam];
  return own.includes(b.arriving.seam) || own.includes(b.leaving.seam);
};
