import { rad } from '../../geom/vec.ts';
import { edgeFolds } from '../../mesh/edge-fold.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { greatestCurvatures } from '../../mesh/principal-curvatures.ts';
import { nextHalfedge, originOf, topologyOf, triangleOfHalfedge } from '../../mesh/topology.ts';

/** What bends may do to the skins of the foam. */
export interface BendWish {
  readonly thicknessMm: number;
  /** k, the neutral surface's place counted from the back, 0 to 1. */
  readonly neutralFraction: number;
  /** A fold sharper than this is grooved: no bend, degrees. */
  readonly foldLimitDeg: number;
  /** Most stretch outside, `(1 - k) t / R`, and squash inside, `k t / R`, by bending alone, per cent. */
  readonly mostPct: number;
}

/** Where foam is bent more tightly than it takes, per edge of a mesh. */
export interface TightBends {
  /** Strain of the skin along the edge over its limit where that is > 1 and no seam runs there; else 0. */
  readonly share: Float64Array;
  /** 1 where a seam along the edge takes the bend away: it is a ridge, and the surface beside it is bent less. */
  readonly isEased: Uint8Array;
}

/** Folds smaller than this bend nothing, radians: what rounding leaves of a plane. */
const LEAST_FOLD = 1e-6;

/**
 * Found once for a surface, so that a verdict costs nothing. A bend as tight for several edges in a row, as all round a narrow tube, is there
 * wherever seams run: it is told, but no seam is asked for.
 * @param positions  the neutral surface, x y z per vertex, mm.
 */
export function tightBends(mesh: Mesh, positions: Float64Array, wish: BendWish): TightBends {
  const { edgeCount, edgeOfHalfedge, edgeVertices, halfedgeOfEdge, twin } = topologyOf(mesh);
  const limit = rad(wish.foldLimitDeg);
  const folds = edgeFolds(mesh).map((fold) => (Math.abs(fold) > limit ? 0 : fold));
  const { triangles } = mesh;
  const curvatures = greatestCurvatures(
    {
      positions,
      triangles,
      vertexCount: positions.length / 3,
      across: Int32Array.from(twin, (h) => (h < 0 ? -1 : triangleOfHalfedge(h))),
      foldRad: Float64Array.from(twin, (_, h) => folds[edgeOfHalfedge[h]]),
    },
    wish.thicknessMm,
  );
  const k = wish.neutralFraction;
  const perCurvature = (100 * Math.max(k, 1 - k) * wish.thicknessMm) / wish.mostPct;
  const shareAt = (v: number): number => perCurvature * Math.abs(curvatures[v]);
  const share = new Float64Array(edgeCount);
  const isEased = new Uint8Array(edgeCount);
  for (let e = 0; e < edgeCount; e += 1) {
    const found = Math.min(shareAt(edgeVertices[2 * e]), shareAt(edgeVertices[2 * e + 1]));
    if (found <= 1 || Math.abs(folds[e]) < LEAST_FOLD) continue;
    share[e] = found;
    const h = halfedgeOfEdge[e];
    const beside = [h, twin[h]].map((side) => originOf(triangles, nextHalfedge(nextHalfedge(side))));
    if (beside.every((v) => shareAt(v) <= 1)) isEased[e] = 1;
  }
  return { share, isEased };
}
