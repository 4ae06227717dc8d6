import { rad } from '../../geom/vec.ts';
import { edgeFolds } from '../edge-fold.ts';
import type { Mesh } from '../mesh.ts';
import { topologyOf } from '../topology.ts';

/** A fold sharper than this is a crease the maker made: it stays a line [shop judgement]. */
const CREASE_RAD = rad(30);

/** Which vertices may go where: those on a line only along it, its ends and crossings nowhere. */
export interface LineVertices {
  /** 1 for a vertex that stays. */
  readonly isFixed: Uint8Array;
  /** For each vertex on a line the two beside it on the line, else -1 -1. Those of fixed ones mean nothing. */
  readonly beside: Int32Array;
  /** Half-edges of all edges of lines, from either side. */
  readonly halfedges: readonly number[];
}

/**
 * Open edges and creases as lines.
 * @param isKept 1 for vertices that stay whatever they are.
 */
export function lineVertices(mesh: Mesh, isKept: Uint8Array): LineVertices {
  const { edgeCount, edgeVertices, halfedgeOfEdge, twin, usesOfEdge } = topologyOf(mesh);
  const folds = edgeFolds(mesh);
  const count = mesh.positions.length / 3;
  const beside = new Int32Array(2 * count).fill(-1);
  const lines = new Uint8Array(count);
  const isFixed = isKept.slice();
  const halfedges: number[] = [];
  const put = (v: number, w: number): void => {
    if (lines[v] < 2) beside[2 * v + lines[v]] = w;
    lines[v] = Math.min(3, lines[v] + 1);
  };
  for (let e = 0; e < edgeCount; e += 1) {
    const h = halfedgeOfEdge[e];
    const [v, w] = [edgeVertices[2 * e], edgeVertices[2 * e + 1]];
    // Where three triangles meet, or two that run the same way, nothing is touched.
    if (twin[h] < 0 && usesOfEdge[e] > 1) isFixed[v] = isFixed[w] = 1;
    if (twin[h] >= 0 && Math.abs(folds[e]) <= CREASE_RAD) continue;
    put(v, w);
    put(w, v);
    halfedges.push(h);
    if (twin[h] >= 0) halfedges.push(twin[h]);
  }
  for (let v = 0; v < count; v += 1) if (lines[v] === 1 || lines[v] > 2) isFixed[v] = 1;
  return { isFixed, beside, halfedges };
}
