import { solveSquare } from './solve-square.ts';
import type { Vec2 } from './vec.ts';

/** A map of the plane that keeps lines straight, row by row: x' = (h0 x + h1 y + h2) / w, y' = (h3 x + h4 y + h5) / w, w = h6 x + h7 y + h8. */
export type Homography = readonly number[];

/** The third homogeneous coordinate of a place, > 0 on the side of the points the map was fitted to, 0 on the line that goes to infinity. */
export const depthOf = (h: Homography, x: number, y: number): number => h[6] * x + h[7] * y + h[8];

export function throughHomography(h: Homography, { x, y }: Vec2): Vec2 {
  const w = depthOf(h, x, y);
  return { x: (h[0] * x + h[1] * y + h[2]) / w, y: (h[3] * x + h[4] * y + h[5]) / w };
}

/** First `b`, then `a`. */
export function composedHomography(a: Homography, b: Homography): Homography {
  return Array.from({ length: 9 }, (_, i) => {
    const [row, column] = [3 * Math.floor(i / 3), i % 3];
    return a[row] * b[column] + a[row + 1] * b[3 + column] + a[row + 2] * b[6 + column];
  });
}

/** The map back, by its adjugate; of the same sign of depth. */
export function inverseHomography([a, b, c, d, e, f, g, h, i]: Homography): Homography {
  const adjugate = [
    e * i - f * h,
    c * h - b * i,
    b * f - c * e,
    f * g - d * i,
    a * i - c * g,
    c * d - a * f,
    d * h - e * g,
    b * g - a * h,
    a * e - b * d,
  ];
  const det = a * adjugate[0] + b * adjugate[3] + c * adjugate[6];
  return adjugate.map((value) => value / det);
}

/** Steps of Gauss and Newton; near the answer each doubles the digits. */
const MOST_STEPS = 20;

/**
 * The map that brings points to others: by the normalised direct linear transform (Hartley and Zisserman 2004, algorithm 4.2), each set first moved to its
 * middle and scaled to a mean distance of sqrt 2. The last element is then 1, which is safe since the middle of points before a camera does not go
 * to infinity. With four points it is exact; with more the sum of squared distances at the `to` points is made least (their eq. 4.6) by Gauss and
 * Newton's steps.
 * @returns null where fewer than four points are given, or where they do not settle it: three in a line of four, or two in one place.
 */
export function fitHomography(from: readonly Vec2[], to: readonly Vec2[]): Homography | null {
  if (from.length < 4 || from.length !== to.length) return null;
  const [a, b] = [normaliser(from), normaliser(to)];
  if (a === null || b === null) return null;
  const p = from.map((point) => throughHomography(a, point));
  const q = to.map((point) => throughHomography(b, point));
  const first = leastSquares(
    p.flatMap(({ x, y }, i) => [
      [x, y, 1, 0, 0, 0, -q[i].x * x, -q[i].x * y],
      [0, 0, 0, x, y, 1, -q[i].y * x, -q[i].y * y],
    ]),
    q.flatMap(({ x, y }) => [x, y]),
  );
  if (first === null) return null;
  let h: Homography = [...first, 1];
  for (let step = 0; from.length > 4 && step < MOST_STEPS; step += 1) {
    const now = h;
    const made = p.map((point) => throughHomography(now, point));
    const rows = p.flatMap(({ x, y }, i) => {
      const w = depthOf(now, x, y);
      const { x: u, y: v } = made[i];
      return [
        [x / w, y / w, 1 / w, 0, 0, 0, (-u * x) / w, (-u * y) / w],
        [0, 0, 0, x / w, y / w, 1 / w, (-v * x) / w, (-v * y) / w],
      ];
    });
    const change = leastSquares(
      rows,
      q.flatMap(({ x, y }, i) => [x - made[i].x, y - made[i].y]),
    );
    if (change === null) break;
    h = [...now.slice(0, 8).map((value, i) => value + change[i]), 1];
    if (Math.max(...change.map(Math.abs)) < 1e-14) break;
  }
  const whole = composedHomography(inverseHomography(b), composedHomography(h, a));
  const middle = from.reduce((sum, { x, y }) => sum + depthOf(whole, x, y), 0) / from.length;
  const signed = whole.map((value) => value / middle);
  return signed.every(Number.isFinite) ? signed : null;
}

/** Moves points to their middle and scales them to a mean distance of sqrt 2; null where they are all in one place. */
function normaliser(points: readonly Vec2[]): Homography | null {
  const n = points.length;
  const [cx, cy] = [points.reduce((sum, { x }) => sum + x, 0) / n, points.reduce((sum, { y }) => sum + y, 0) / n];
  const mean = points.reduce((sum, { x, y }) => sum + Math.hypot(x - cx, y - cy), 0) / n;
  const scale = Math.SQRT2 / mean;
  return Number.isFinite(scale) && mean > 0 ? [scale, 0, -scale * cx, 0, scale, -scale * cy, 0, 0, 1] : null;
}

/** Least squares by the normal equations, which well-scaled points allow; a square system as it stands. */
function leastSquares(rows: readonly (readonly number[])[], right: readonly number[]): number[] | null {
  const n = rows[0].length;
  if (rows.length === n) return solveSquare(rows, right);
  const normal = Array.from({ length: n }, (_, i) =>
    Array.from({ length: n }, (__, j) => rows.reduce((sum, row) => sum + row[i] * row[j], 0)),
  );
  return solveSquare(
    normal,
    Array.from({ length: n }, (_, i) => rows.reduce((sum, row, k) => sum + row[i] * right[k], 0)),
  );
}
