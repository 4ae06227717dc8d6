import earcut from 'earcut';
import { STRAIGHT_CORNER_SHARE, TURNED_OVER_SHARE } from '../base/tolerance.ts';
import { doesRingCross } from './ring-cross.ts';

/** From this many corners on a polygon is tested for crossing itself first: on a scribble earcut takes time without bound. */
const CROSS_TEST_FROM = 64;

/**
 * Cuts one polygon in space into triangles, by earcut in the polygon's own plane: the one square to the sum of its area vectors
 * (M. Newell's normal; for a polygon that is not flat it is the plane of greatest shadow). There are always two triangles fewer than
 * corners, every corner is used, and each side of the polygon is a side of exactly one triangle, so that neighbours meet without gaps:
 * corners on a straight side, which earcut may leave out, are put back by splitting the triangle there.
 *
 *      3-------2        the corner 4 on the side 3-0 is no ear;
 *      |     / |        (0 2 3) without it becomes (0 2 4) and (4 2 3)
 *      4   /   |
 *      | /     |
 *      0-------1
 *
 * A polygon that has no area, crosses itself, or that earcut cannot fill without turning a triangle over is fanned from its first
 * corner instead: corners 0, i, i + 1.
 * @param points packed x y z, at least three corners, no two neighbours on one spot.
 * @returns three corner numbers per triangle, each running round as the polygon does.
 */
export function triangulatePolygon3(points: ArrayLike<number>): number[] {
  const count = points.length / 3;
  if (count === 3) return [0, 1, 2];
  const flat = intoOwnPlane(points);
  if (flat === null) return fan(count);
  const corners = withoutStraightCorners(flat.xy, flat.size * STRAIGHT_CORNER_SHARE);
  if (corners.length < 3) return fan(count);
  const triangles = fillCorners(flat.xy, corners);
  if (triangles.length < 3 * (count - 2)) putBackSkipped(triangles, count);
  const isRight =
    triangles.length === 3 * (count - 2) && turnedOverArea(flat.xy, triangles) <= TURNED_OVER_SHARE * flat.size ** 2;
  return isRight ? triangles : fan(count);
}

/**
 * Cuts a flat area into counter-clockwise triangles.
 * @param outer  packed x y of the outer ring.
 * @param holes  packed x y of each hole, inside the outer ring.
 * @returns three point numbers per triangle, counted through the outer ring and then through the holes in their order.
 */
export function triangulateRings(outer: ArrayLike<number>, holes: readonly ArrayLike<number>[] = []): number[] {
  if (holes.length === 0) return earcut(outer);
  const xy = new Float64Array(holes.reduce((sum, hole) => sum + hole.length, outer.length));
  xy.set(outer);
  const starts: number[] = [];
  let at = outer.length;
  for (const hole of holes) {
    starts.push(at / 2);
    xy.set(hole, at);
    at += hole.length;
  }
  return earcut(xy, starts);
}

function fan(count: number): number[] {
  const triangles: number[] = [];
  for (let i = 1; i + 1 < count; i += 1) triangles.push(0, i, i + 1);
  return triangles;
}

/** The polygon seen along its Newell normal, counter-clockwise, about its first corner; null when it has no area. */
function intoOwnPlane(points: ArrayLike<number>): { readonly xy: Float64Array; readonly size: number } | null {
  const [x0, y0, z0] = [points[0], points[1], points[2]];
  let [nx, ny, nz, reach] = [0, 0, 0, 0];
  for (let i = 0; i < points.length; i += 3) {
    const j = i + 3 < points.length ? i + 3 : 0;
    const [ax, ay, az] = [points[i] - x0, points[i + 1] - y0, points[i + 2] - z0];
    const [bx, by, bz] = [points[j] - x0, points[j + 1] - y0, points[j + 2] - z0];
    nx += ay * bz - az * by;
    ny += az * bx - ax * bz;
    nz += ax * by - ay * bx;
    reach = Math.max(reach, Math.abs(ax), Math.abs(ay), Math.abs(az));
  }
  const length = Math.hypot(nx, ny, nz);
  if (!(length > STRAIGHT_CORNER_SHARE * reach * reach)) return null;
  [nx, ny, nz] = [nx / length, ny / length, nz / length];
  // One axis of the plane is square to the normal and to the axis of space that lies farthest from it.
  const [fx, fy, fz] = [Math.abs(nx), Math.abs(ny), Math.abs(nz)];
  const least = fx <= fy && fx <= fz ? 0 : fy <= fz ? 1 : 2;
  let [ux, uy, uz] = least === 0 ? [0, nz, -ny] : least === 1 ? [-nz, 0, nx] : [ny, -nx, 0];
  const uLength = Math.hypot(ux, uy, uz);
  [ux, uy, uz] = [ux / uLength, uy / uLength, uz / uLength];
  const [vx, vy, vz] = [ny * uz - nz * uy, nz * ux - nx * uz, nx * uy - ny * ux];
  const xy = new Float64Array((2 * points.length) / 3);
  for (let i = 0, k = 0; i < points.length; i += 3, k += 2) {
    const [x, y, z] = [points[i] - x0, points[i + 1] - y0, points[i + 2] - z0];
    xy[k] = ux * x + uy * y + uz * z;
    xy[k + 1] = vx * x + vy * y + vz * z;
  }
  return { xy, size: reach };
}

/** Corners at which the polygon turns: all but those within `tolerance` of the straight line between the last kept one and the next. */
function withoutStraightCorners(xy: Float64Array, tolerance: number): number[] {
  const count = xy.length / 2;
  const kept: number[] = [];
  for (let i = 0; i < count; i += 1) {
    const before = kept.length > 0 ? kept[kept.length - 1] : count - 1;
    const after = i + 1 < count ? i + 1 : (kept[0] ?? 0);
    if (!isBetween(xy, before, i, after, tolerance)) kept.push(i);
  }
  return kept;
}

function isBetween(xy: Float64Array, a: number, m: number, b: number, tolerance: number): boolean {
  const [dx, dy] = [xy[2 * b] - xy[2 * a], xy[2 * b + 1] - xy[2 * a + 1]];
  const [ex, ey] = [xy[2 * m] - xy[2 * a], xy[2 * m + 1] - xy[2 * a + 1]];
  const length = Math.hypot(dx, dy);
  const along = dx * ex + dy * ey;
  return Math.abs(dx * ey - dy * ex) <= tolerance * length && along > 0 && along < length * length;
}

function fillCorners(xy: Float64Array, corners: readonly number[]): number[] {
  if (corners.length === 3) return [...corners];
  const ring = new Float64Array(2 * corners.length);
  for (const [k, corner] of corners.entries()) {
    ring[2 * k] = xy[2 * corner];
    ring[2 * k + 1] = xy[2 * corner + 1];
  }
  if (corners.length >= CROSS_TEST_FROM && doesRingCross(ring)) return [];
  const triangles = earcut(ring);
  for (let i = 0; i < triangles.length; i += 1) triangles[i] = corners[triangles[i]];
  return triangles;
}

/** Splits, in place, every triangle whose outer side passes over corners of the polygon, until it passes over none. */
function putBackSkipped(triangles: number[], count: number): void {
  const sides = new Set<number>();
  const key = (a: number, b: number): number => a * count + b;
  for (let i = 0; i < triangles.length; i += 3) {
    for (let k = 0; k < 3; k += 1) sides.add(key(triangles[i + k], triangles[i + ((k + 1) % 3)]));
  }
  for (let i = 0; i < triangles.length;) {
    const k = [0, 1, 2].find((corner) => {
      const [a, b] = [triangles[i + corner], triangles[i + ((corner + 1) % 3)]];
      return (a + 1) % count !== b && !sides.has(key(b, a));
    });
    if (k === undefined) {
      i += 3;
      continue;
    }
    if (triangles.length >= 3 * (count - 2)) return;
    const [a, b, c] = [triangles[i + k], triangles[i + ((k + 1) % 3)], triangles[i + ((k + 2) % 3)]];
    const m = (a + 1) % count;
    [triangles[i], triangles[i + 1], triangles[i + 2]] = [a, m, c];
    triangles.push(m, b, c);
    for (const side of [key(a, m), key(m, c), key(c, m), key(m, b)]) sides.add(side);
  }
}

/** Area of the triangles that run clockwise, counted twice. */
function turnedOverArea(xy: Float64Array, triangles: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [2 * triangles[i], 2 * triangles[i + 1], 2 * triangles[i + 2]];
    const twice = (xy[b] - xy[a]) * (xy[c + 1] - xy[a + 1]) - (xy[b + 1] - xy[a + 1]) * (xy[c] - xy[a]);
    if (twice < 0) sum -= twice;
  }
  return sum;
}
