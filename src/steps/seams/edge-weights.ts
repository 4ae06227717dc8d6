import { dot3, type Vec3 } from '../../geom/vec.ts';
import { diagonalEdges, edgeFolds } from '../../mesh/edge-fold.ts';
import { triangleNormal } from '../../mesh/measure.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { topologyOf, triangleOfHalfedge } from '../../mesh/topology.ts';
import type { Region, SeamPaint } from '../../model/flatten-settings.ts';

/** What makes a seam cheaper or dearer; left out: nothing does. */
export interface EdgeWeightWish {
  /** Areas with what is said of seams there. Where two hold a polygon, the later one counts. */
  readonly regions?: readonly Pick<Region, 'faces' | 'seams'>[];
  /** Direction, length 1, of the side that is seen least: to the back, down. */
  readonly hidden?: Vec3;
  /** Per edge what lies opposite: those on the mirror line are their own. */
  readonly mirror?: Int32Array;
}

/** A seam in a preferred area costs this share of a plain one: a way three times as long is still taken (shop judgement). */
export const PREFER_WEIGHT = 1 / 3;

/** A crease of a right angle or more: a seam is expected there, and its bevel closes it (shop judgement). */
export const CREASE_WEIGHT = 0.5;

/** Fold from which a crease costs {@link CREASE_WEIGHT}, radians; under it the price falls with the fold. */
const FULL_CREASE = Math.PI / 2;

/** A seam right on the side that is seen least (shop judgement). */
export const HIDDEN_WEIGHT = 0.6;

/** A seam on the mirror line: one for both sides, and where most eyes expect it (shop judgement). */
export const MIRROR_LINE_WEIGHT = 0.8;

/** A diagonal that only triangulation made: it crosses a face the maker modelled whole (shop judgement). */
export const DIAGONAL_WEIGHT = 2;

/**
 * What a seam costs along each edge beside a plain one, which has 1. The prices multiply. Infinity inside of an area that is to be kept clear;
 * the border of such an area may be a seam. Open edges have 1: they are parted as they are.
 */
export function edgeWeights(mesh: Mesh, { regions = [], hidden, mirror }: EdgeWeightWish = {}): Float64Array {
  const { edgeCount, halfedgeOfEdge, twin } = topologyOf(mesh);
  const folds = edgeFolds(mesh);
  const diagonal = diagonalEdges(mesh);
  const paint = paintOfFaces(regions);
  const paintOf = (t: number): SeamPaint | undefined => paint.get(mesh.faceOfTriangle[t]);
  const weights = new Float64Array(edgeCount).fill(1);
  for (let e = 0; e < edgeCount; e += 1) {
    const h = halfedgeOfEdge[e];
    if (twin[h] < 0) continue;
    const [left, right] = [triangleOfHalfedge(h), triangleOfHalfedge(twin[h])];
    const said = [paintOf(left), paintOf(right)];
    if (said.every((word) => word === 'clear')) {
      weights[e] = Infinity;
      continue;
    }
    weights[e] = 1 - (1 - CREASE_WEIGHT) * Math.min(1, Math.abs(folds[e]) / FULL_CREASE);
    if (diagonal[e] === 1) weights[e] *= DIAGONAL_WEIGHT;
    if (said.includes('prefer')) weights[e] *= PREFER_WEIGHT;
    if (mirror?.[e] === e) weights[e] *= MIRROR_LINE_WEIGHT;
    if (hidden !== undefined) {
      const facing = [left, right].map((t) => dot3(triangleNormal(mesh.positions, mesh.triangles, t), hidden));
      weights[e] *= 1 - (1 - HIDDEN_WEIGHT) * Math.max(0, (facing[0] + facing[1]) / 2);
    }
  }
  return weights;
}

/** 1 per edge inside of an area that is to be kept clear: both of its sides lie in one. */
export function clearEdges(mesh: Mesh, regions: readonly Pick<Region, 'faces' | 'seams'>[]): Uint8Array {
  const { edgeCount, halfedgeOfEdge, twin } = topologyOf(mesh);
  const paint = paintOfFaces(regions);
  const isClear = (h: number): boolean => paint.get(mesh.faceOfTriangle[triangleOfHalfedge(h)]) === 'clear';
  return Uint8Array.from({ length: edgeCount }, (_, e) => {
    const h = halfedgeOfEdge[e];
    return twin[h] >= 0 && isClear(h) && isClear(twin[h]) ? 1 : 0;
  });
}

function paintOfFaces(regions: readonly Pick<Region, 'faces' | 'seams'>[]): ReadonlyMap<number, SeamPaint | undefined> {
  const paint = new Map<number, SeamPaint | undefined>();
  for (const { faces, seams } of regions) for (const face of faces) paint.set(face, seams);
  return paint;
}
