import type { SculptView, SeamsView } from '../model/bench-view.ts';
import { cornerAfter } from '../mesh/corners-at-vertices.ts';
import type { LineBatch } from './line-batch.ts';
import { halfedgeFrom, edgeBetween, type SculptIndex } from './sculpt-index.ts';
import { RIDGE_RAD } from './shading-groups.ts';

/** Half-edges of the sculpt to draw lines along, by what they mean. */
export interface SurfaceLines {
  /** Both sides of every seam, and the edges of the prop. */
  readonly seams: Uint32Array;
  readonly open: Uint32Array;
  /** Sharp folds that are no seam. */
  readonly ridges: Uint32Array;
  /** Half-edges of each chain in its order: left side, and right side where it has one (running against it). */
  readonly chains: readonly { readonly left: Uint32Array; readonly right: Uint32Array }[];
}

export function surfaceLines(sculpt: SculptView, index: SculptIndex, view: SeamsView | null): SurfaceLines {
  const seams: number[] = [];
  const open: number[] = [];
  const ridges: number[] = [];
  for (let e = 0; e < sculpt.edgeIsOpen.length; e += 1) {
    const [g, h] = [index.halfedgesOfEdge[2 * e], index.halfedgesOfEdge[2 * e + 1]];
    if (g < 0) continue;
    if (sculpt.edgeIsOpen[e] === 1) open.push(g);
    else if (view !== null && view.chainOfEdge[e] >= 0) seams.push(g, ...(h < 0 ? [] : [h]));
    else if (sculpt.edgeIsDiagonal[e] === 0 && Math.abs(sculpt.edgeFoldRad[e]) > RIDGE_RAD) ridges.push(g);
  }
  const chains = (view?.chains ?? []).map(({ vertices, sides }) => {
    const left: number[] = [];
    const right: number[] = [];
    for (let i = 0; i + 1 < vertices.length; i += 1) {
      const e = edgeBetween(index, sculpt.edgeVertices, vertices[i], vertices[i + 1]);
      if (e < 0) continue;
      left.push(halfedgeFrom(index, sculpt.triangles, e, vertices[i]));
      if (sides.length > 1) right.push(halfedgeFrom(index, sculpt.triangles, e, vertices[i + 1]));
    }
    const known = (list: number[]): Uint32Array => Uint32Array.from(list.filter((h) => h >= 0));
    return { left: known(left), right: known(right) };
  });
  return { seams: Uint32Array.from(seams), open: Uint32Array.from(open), ridges: Uint32Array.from(ridges), chains };
}

/** Fills a batch with one segment for each half-edge. @param corners packed xyz per corner of the sculpt's triangles. */
export function drawAlong(batch: LineBatch, halfedges: ArrayLike<number>, corners: Float32Array): void {
  const points = batch.room(halfedges.length);
  for (let i = 0; i < halfedges.length; i += 1) {
    const [a, b] = [3 * halfedges[i], 3 * cornerAfter(halfedges[i])];
    for (let k = 0; k < 3; k += 1) {
      points[6 * i + k] = corners[a + k];
      points[6 * i + 3 + k] = corners[b + k];
    }
  }
  batch.filled();
}

/** Adds xyz xyz for each half-edge. */
export function addAlong(target: number[], halfedges: ArrayLike<number>, corners: Float32Array): void {
  for (let i = 0; i < halfedges.length; i += 1) {
    const [a, b] = [3 * halfedges[i], 3 * cornerAfter(halfedges[i])];
    target.push(corners[a], corners[a + 1], corners[a + 2], corners[b], corners[b + 1], corners[b + 2]);
  }
}
