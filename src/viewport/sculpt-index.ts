import type { Work } from '../base/work.ts';
import type { SculptView } from '../model/bench-view.ts';
import { cornerAfter, cornersAtVertices, type CornersAtVertices } from '../mesh/corners-at-vertices.ts';

/** Who touches whom on the sculpt, for drawing and picking. Half-edge `3 t + k` runs from corner `k` of triangle `t` to the next. */
export interface SculptIndex {
  readonly around: CornersAtVertices;
  /** Edge of the topology that each half-edge runs along, or -1. */
  readonly edgeOfHalfedge: Int32Array;
  /** Two half-edges per edge, -1 where there is none; more than two (a fault of the file) are left out. */
  readonly halfedgesOfEdge: Int32Array;
  /** Edges at each vertex: those of `v` are `edges[edgeStarts[v] .. edgeStarts[v + 1])`. */
  readonly edgeStarts: Uint32Array;
  readonly edges: Uint32Array;
}

/** Builds the index in one pass over the corners and the edges. */
export async function indexSculpt(sculpt: SculptView, work: Work): Promise<SculptIndex> {
  const { triangles, edgeVertices } = sculpt;
  const vertexCount = sculpt.positions.length / 3;
  const around = cornersAtVertices(triangles, vertexCount);
  await work.pause(0);
  const { starts: edgeStarts, corners: ends } = cornersAtVertices(edgeVertices, vertexCount);
  const edges = ends.map((end) => end >> 1);
  const edgeOfHalfedge = new Int32Array(triangles.length).fill(-1);
  const halfedgesOfEdge = new Int32Array(edgeVertices.length).fill(-1);
  for (let h = 0; h < triangles.length; h += 1) {
    if (h % 12288 === 0) await work.pause(0);
    const [v, w] = [triangles[h], triangles[cornerAfter(h)]];
    for (let i = edgeStarts[v]; i < edgeStarts[v + 1]; i += 1) {
      const e = edges[i];
      if (edgeVertices[2 * e] !== w && edgeVertices[2 * e + 1] !== w) continue;
      edgeOfHalfedge[h] = e;
      if (halfedgesOfEdge[2 * e] < 0) halfedgesOfEdge[2 * e] = h;
      else if (halfedgesOfEdge[2 * e + 1] < 0) halfedgesOfEdge[2 * e + 1] = h;
      break;
    }
  }
  return { around, edgeOfHalfedge, halfedgesOfEdge, edgeStarts, edges };
}

/** The half-edge along edge `e` that runs from vertex `v`, or -1. */
export function halfedgeFrom(index: SculptIndex, triangles: Uint32Array, e: number, v: number): number {
  const [g, h] = [index.halfedgesOfEdge[2 * e], index.halfedgesOfEdge[2 * e + 1]];
  if (g >= 0 && triangles[g] === v) return g;
  return h >= 0 && triangles[h] === v ? h : -1;
}

/** The edge between two vertices, or -1. */
export function edgeBetween(index: SculptIndex, edgeVertices: Uint32Array, v: number, w: number): number {
  for (let i = index.edgeStarts[v]; i < index.edgeStarts[v + 1]; i += 1) {
    const e = index.edges[i];
    if (edgeVertices[2 * e] === w || edgeVertices[2 * e + 1] === w) return e;
  }
  return -1;
}
