import type { Stepwise } from '../base/stepwise.ts';
import { eigen3 } from '../geom/symmetric-3x3.ts';
import { cross3, dot3, length3, pointAt3, sub3, unit3, type Vec3 } from '../geom/vec.ts';

/**
 * Directions whose planes agree better than this share of the main one are treated as saying nothing about that direction:
 * two planes meeting at under about 0.02 degrees. Above it their meeting line is kept exactly.
 */
const SAME_PLANE_SHARE = 1e-8;

/** Longest move of a vertex, in thicknesses: a spike sharper than about 14 degrees is blunted and reported. */
export const LONGEST_OFFSET = 8;

export interface VertexOffsets {
  /** x y z per vertex: how far the vertex moves when its planes move outward by 1. */
  readonly directions: Float64Array;
  /** Vertices whose move was cut to {@link LONGEST_OFFSET}. */
  readonly bounded: readonly number[];
  /** Vertices where more than three planes cannot all be kept, with the largest miss for a move of 1. */
  readonly unkept: readonly { readonly vertex: number; readonly miss: number }[];
}

/** Vertices or triangles done in one stretch: a few milliseconds. */
const STRETCH = 2000;

/** A miss under this share of the offset is left unsaid: it is under any knife's accuracy. */
const MISS_SHARE_WORTH_SAYING = 0.02;

/**
 * For every vertex the vector `u` of least length with `n . u = 1` for the planes of the faces round it, by least squares weighted by
 * corner angle where more than three planes meet (foam model 1). `S(d)` is then `position + d u`: flat panels stay flat and meet
 * on the bisecting plane of their fold.
 * @param positions x y z per vertex, mm.
 * @param triangles three vertices each, counter-clockwise from outside. Empty ones have no plane and are passed over.
 */
export function* vertexOffsetSteps(positions: Float64Array, triangles: Uint32Array): Stepwise<VertexOffsets> {
  const vertexCount = positions.length / 3;
  const { starts, corners } = cornersOfVertices(triangles, vertexCount);
  const { normals, angles } = yield* cornerPlanes(positions, triangles);
  const directions = new Float64Array(3 * vertexCount);
  const bounded: number[] = [];
  const unkept: { vertex: number; miss: number }[] = [];
  for (let v = 0; v < vertexCount; v += 1) {
    if (v % STRETCH === 0) yield;
    const own = corners.subarray(starts[v], starts[v + 1]);
    const move = leastMove(own, normals, angles);
    const length = Math.hypot(move[0], move[1], move[2]);
    if (length > LONGEST_OFFSET) {
      bounded.push(v);
      for (let axis = 0; axis < 3; axis += 1) move[axis] *= LONGEST_OFFSET / length;
    } else {
      const miss = largestMiss(own, normals, angles, move);
      if (miss > MISS_SHARE_WORTH_SAYING) unkept.push({ vertex: v, miss });
    }
    directions.set(move, 3 * v);
  }
  return { directions, bounded, unkept };
}

function cornersOfVertices(triangles: Uint32Array, vertexCount: number): { starts: Uint32Array; corners: Uint32Array } {
  const starts = new Uint32Array(vertexCount + 1);
  for (const v of triangles) starts[v + 1] += 1;
  for (let v = 0; v < vertexCount; v += 1) starts[v + 1] += starts[v];
  const fill = starts.slice();
  const corners = new Uint32Array(triangles.length);
  for (let c = 0; c < triangles.length; c += 1) corners[fill[triangles[c]]++] = c;
  return { starts, corners };
}

/** Normal of each triangle and angle at each corner, radians. */
function* cornerPlanes(
  positions: Float64Array,
  triangles: Uint32Array,
): Stepwise<{ normals: Float64Array; angles: Float64Array }> {
  const normals = new Float64Array(triangles.length);
  const angles = new Float64Array(triangles.length);
  for (let t = 0; t < triangles.length / 3; t += 1) {
    if (t % STRETCH === 0) yield;
    const p = [0, 1, 2].map((k) => pointAt3(positions, triangles[3 * t + k]));
    const normal = unit3(cross3(sub3(p[1], p[0]), sub3(p[2], p[0])));
    normals[3 * t] = normal.x;
    normals[3 * t + 1] = normal.y;
    normals[3 * t + 2] = normal.z;
    if (length3(normal) === 0) continue;
    for (let k = 0; k < 3; k += 1)
      angles[3 * t + k] = angleBetween(sub3(p[(k + 1) % 3], p[k]), sub3(p[(k + 2) % 3], p[k]));
  }
  return { normals, angles };
}

const angleBetween = (a: Vec3, b: Vec3): number => Math.atan2(length3(cross3(a, b)), dot3(a, b));

/** Solves the weighted least squares by the pseudo-inverse of its 3 x 3 matrix. */
function leastMove(corners: Uint32Array, normals: Float64Array, angles: Float64Array): [number, number, number] {
  const m = [0, 0, 0, 0, 0, 0];
  const rhs = [0, 0, 0];
  for (const c of corners) {
    const w = angles[c];
    const n = 3 * Math.floor(c / 3);
    const [x, y, z] = [normals[n], normals[n + 1], normals[n + 2]];
    m[0] += w * x * x;
    m[1] += w * x * y;
    m[2] += w * x * z;
    m[3] += w * y * y;
    m[4] += w * y * z;
    m[5] += w * z * z;
    rhs[0] += w * x;
    rhs[1] += w * y;
    rhs[2] += w * z;
  }
  const { values, vectors } = eigen3(m);
  const move: [number, number, number] = [0, 0, 0];
  for (let i = 0; i < 3; i += 1) {
    if (!(values[i] > SAME_PLANE_SHARE * values[0])) continue;
    const [x, y, z] = vectors[i];
    const along = (x * rhs[0] + y * rhs[1] + z * rhs[2]) / values[i];
    move[0] += along * x;
    move[1] += along * y;
    move[2] += along * z;
  }
  return move;
}

function largestMiss(
  corners: Uint32Array,
  normals: Float64Array,
  angles: Float64Array,
  move: readonly number[],
): number {
  let miss = 0;
  for (const c of corners) {
    if (angles[c] === 0) continue;
    const n = 3 * Math.floor(c / 3);
    miss = Math.max(miss, Math.abs(normals[n] * move[0] + normals[n + 1] * move[1] + normals[n + 2] * move[2] - 1));
  }
  return miss;
}
