import { EMPTY_TRIANGLE_SHARE } from '../../base/tolerance.ts';
import type { Patch } from '../../model/patch.ts';

/**
 * The patch as it is in space, triangle by triangle: what flattening tries to keep.
 *
 * For a triangle laid in its own plane, `gradients` holds three vectors g0, g1, g2 with which the map from that plane to flat
 * coordinates u is the 2 x 2 matrix `F = u0 g0ᵀ + u1 g1ᵀ + u2 g2ᵀ`.
 */
export interface RestShape {
  readonly vertexCount: number;
  readonly triangles: Uint32Array;
  /** x y z per local vertex, mm. */
  readonly points: Float64Array;
  /** mm² per triangle, as it is; 0 for an empty one. */
  readonly areas: Float64Array;
  /** Share of each triangle in the energy, summing to 1. Needles count at least a little, so that they are kept from flipping. */
  readonly weights: Float64Array;
  /** g0x g0y g1x g1y g2x g2y per triangle, 1/mm. */
  readonly gradients: Float64Array;
}

/**
 * Least height of a triangle over its longest side, as a share of that side: flatter ones are opened to it, so that a needle of a scan
 * (or a fully empty triangle) bounds the solver instead of breaking it. Its stretch is still measured on its true shape.
 */
const LEAST_HEIGHT_SHARE = 1e-6;

/** Reads the patch's own points out of the positions of the whole mesh, mm. */
export function restShape(patch: Patch, positions: Float64Array): RestShape {
  const vertexCount = patch.meshVertices.length;
  const points = new Float64Array(3 * vertexCount);
  for (let v = 0; v < vertexCount; v += 1) {
    points.set(positions.subarray(3 * patch.meshVertices[v], 3 * patch.meshVertices[v] + 3), 3 * v);
  }
  const count = patch.triangles.length / 3;
  const areas = new Float64Array(count);
  const weights = new Float64Array(count);
  const gradients = new Float64Array(6 * count);
  for (let t = 0; t < count; t += 1) fillTriangle(patch.triangles, points, t, areas, weights, gradients);
  const total = weights.reduce((sum, w) => sum + w, 0);
  for (let t = 0; t < count; t += 1) weights[t] /= total;
  return { vertexCount, triangles: patch.triangles, points, areas, weights, gradients };
}

function fillTriangle(
  triangles: Uint32Array,
  points: Float64Array,
  t: number,
  areas: Float64Array,
  weights: Float64Array,
  gradients: Float64Array,
): void {
  const corner = [triangles[3 * t], triangles[3 * t + 1], triangles[3 * t + 2]];
  const sides = corner.map((v, k) => distance(points, v, corner[(k + 1) % 3]));
  const longest = sides.indexOf(Math.max(...sides));
  // Laid on its longest side, which runs from corner i to corner j along x; k is the corner over it.
  const [i, j, k] = [longest, (longest + 1) % 3, (longest + 2) % 3];
  const base = sides[longest] > 0 ? sides[longest] : Number.MIN_VALUE ** 0.25;
  const { along, height } = placeOver(points, corner[i], corner[j], corner[k], base);
  const trueArea = (base * height) / 2;
  areas[t] = trueArea > EMPTY_TRIANGLE_SHARE * base * base ? trueArea : 0;
  const opened = Math.max(height, LEAST_HEIGHT_SHARE * base);
  weights[t] = (base * opened) / 2;
  const gi = [-1 / base, along / (base * opened) - 1 / opened];
  const gj = [1 / base, -along / (base * opened)];
  const gk = [0, 1 / opened];
  gradients.set(gi, 6 * t + 2 * i);
  gradients.set(gj, 6 * t + 2 * j);
  gradients.set(gk, 6 * t + 2 * k);
}

function distance(points: Float64Array, v: number, w: number): number {
  return Math.hypot(
    points[3 * w] - points[3 * v],
    points[3 * w + 1] - points[3 * v + 1],
    points[3 * w + 2] - points[3 * v + 2],
  );
}

/** Where corner `k` stands over the side from `i` to `j` of length `base`: along it and above it, mm. */
function placeOver(
  points: Float64Array,
  i: number,
  j: number,
  k: number,
  base: number,
): { along: number; height: number } {
  const e = [0, 1, 2].map((axis) => (points[3 * j + axis] - points[3 * i + axis]) / base);
  const d = [0, 1, 2].map((axis) => points[3 * k + axis] - points[3 * i + axis]);
  const along = e[0] * d[0] + e[1] * d[1] + e[2] * d[2];
  const height = Math.hypot(e[1] * d[2] - e[2] * d[1], e[2] * d[0] - e[0] * d[2], e[0] * d[1] - e[1] * d[0]);
  return { along, height };
}
