import { Triangle, Vector3 } from 'three';

/** Where a ray meets packed triangles (three corners of xyz each). */
export interface RayHit {
  readonly triangle: number;
  readonly distance: number;
}

/**
 * The nearest of some triangles that a ray meets from either side, or null.
 * After T. Möller, B. Trumbore, Fast, Minimum Storage Ray/Triangle Intersection, 1997.
 * @param corners   packed xyz, three corners a triangle.
 * @param triangles which triangles to look at; null for all of them.
 * @param offset    place of triangle 0 in `corners`.
 * @param nearest   hits farther than this do not count.
 */
export function hitCorners(
  origin: Vector3,
  direction: Vector3,
  corners: Float32Array,
  triangles: Uint32Array | null,
  offset: number,
  nearest: number,
): RayHit | null {
  const { x: ox, y: oy, z: oz } = origin;
  const { x: dx, y: dy, z: dz } = direction;
  const count = triangles?.length ?? (corners.length - offset) / 9;
  let triangle = -1;
  for (let i = 0; i < count; i += 1) {
    const t = triangles === null ? i : triangles[i];
    const c = offset + 9 * t;
    const [ax, ay, az] = [corners[c], corners[c + 1], corners[c + 2]];
    const [ux, uy, uz] = [corners[c + 3] - ax, corners[c + 4] - ay, corners[c + 5] - az];
    const [vx, vy, vz] = [corners[c + 6] - ax, corners[c + 7] - ay, corners[c + 8] - az];
    const [px, py, pz] = [dy * vz - dz * vy, dz * vx - dx * vz, dx * vy - dy * vx];
    const det = ux * px + uy * py + uz * pz;
    if (det === 0) continue;
    const [sx, sy, sz] = [ox - ax, oy - ay, oz - az];
    const u = (sx * px + sy * py + sz * pz) / det;
    if (u < 0 || u > 1) continue;
    const [qx, qy, qz] = [sy * uz - sz * uy, sz * ux - sx * uz, sx * uy - sy * ux];
    const v = (dx * qx + dy * qy + dz * qz) / det;
    if (v < 0 || u + v > 1) continue;
    const distance = (vx * qx + vy * qy + vz * qz) / det;
    if (distance <= 0 || distance >= nearest) continue;
    nearest = distance;
    triangle = t;
  }
  return triangle < 0 ? null : { triangle, distance: nearest };
}

const tested = new Triangle();
const met = new Vector3();

/** How far the nearest of some triangles is from a place, or `most` where none is nearer. Triangles as of {@link hitCorners}. */
export function distanceToCorners(
  place: Vector3,
  corners: Float32Array,
  triangles: Uint32Array | null,
  offset: number,
  most: number,
): number {
  const count = triangles?.length ?? (corners.length - offset) / 9;
  let nearest = most;
  for (let i = 0; i < count; i += 1) {
    const c = offset + 9 * (triangles === null ? i : triangles[i]);
    tested.a.fromArray(corners, c);
    tested.b.fromArray(corners, c + 3);
    tested.c.fromArray(corners, c + 6);
    nearest = Math.min(nearest, tested.closestPointToPoint(place, met).distanceTo(place));
  }
  return nearest;
}
