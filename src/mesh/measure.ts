import { cross3, dot3, length3, pointAt3, scale3, sub3, unit3, type Vec3 } from '../geom/vec.ts';
import type { Mesh } from './mesh.ts';

/** Half the cross product of two sides of triangle `t`: its length is the area, mm², its direction the outward normal. */
export function areaVector(positions: Float64Array, triangles: Uint32Array, t: number): Vec3 {
  const a = pointAt3(positions, triangles[3 * t]);
  const b = pointAt3(positions, triangles[3 * t + 1]);
  const c = pointAt3(positions, triangles[3 * t + 2]);
  return scale3(cross3(sub3(b, a), sub3(c, a)), 0.5);
}

/** Area of triangle `t`, mm². */
export const triangleArea = (positions: Float64Array, triangles: Uint32Array, t: number): number =>
  length3(areaVector(positions, triangles, t));

/** Outward normal of triangle `t`, length 1; the zero vector for an empty triangle. */
export const triangleNormal = (positions: Float64Array, triangles: Uint32Array, t: number): Vec3 =>
  unit3(areaVector(positions, triangles, t));

/** Area of the whole surface, mm². */
export function surfaceArea(positions: Float64Array, triangles: Uint32Array): number {
  let sum = 0;
  for (let t = 0; t < triangles.length / 3; t += 1) sum += triangleArea(positions, triangles, t);
  return sum;
}

/**
 * Signed turn between the outward normals of two faces across their common edge, radians; convex > 0, flat 0 (house style, section 3).
 * @param n1    outward normal on the left of the edge, length 1.
 * @param n2    outward normal on the right of the edge, length 1.
 * @param along direction of the edge as it runs counter-clockwise round the left face, any length.
 */
export function foldBetween(n1: Vec3, n2: Vec3, along: Vec3): number {
  const turn = cross3(n1, n2);
  return Math.atan2(dot3(turn, unit3(along)), dot3(n1, n2));
}

export interface Box3 {
  readonly min: Vec3;
  readonly max: Vec3;
}

/** The smallest upright box round packed points. */
export function boxOfPoints3(positions: ArrayLike<number>): Box3 {
  const min = [Infinity, Infinity, Infinity];
  const max = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < positions.length; i += 1) {
    const axis = i % 3;
    if (positions[i] < min[axis]) min[axis] = positions[i];
    if (positions[i] > max[axis]) max[axis] = positions[i];
  }
  return { min: { x: min[0], y: min[1], z: min[2] }, max: { x: max[0], y: max[1], z: max[2] } };
}

/** Length of the diagonal of the box round a mesh, mm. */
export function diagonalOf(mesh: Mesh): number {
  const { min, max } = boxOfPoints3(mesh.positions);
  return length3(sub3(max, min));
}

/** Middle of a triangle, x y z. */
export function triangleCentre({ positions, triangles }: Mesh, t: number): [number, number, number] {
  const [a, b, c] = [3 * triangles[3 * t], 3 * triangles[3 * t + 1], 3 * triangles[3 * t + 2]];
  const middle = (axis: number): number => (positions[a + axis] + positions[b + axis] + positions[c + axis]) / 3;
  return [middle(0), middle(1), middle(2)];
}
