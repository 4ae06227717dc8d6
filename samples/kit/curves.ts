import { vec3, type Vec3 } from '../../src/geom/vec.ts';

/** A curve in space, mm, run through for t from 0 to 1. */
export type Curve = (t: number) => Vec3;

/** The point at fraction `t` from `a` to `b`; exactly `a` at 0 and `b` at 1. */
export const between = (a: Vec3, b: Vec3, t: number): Vec3 =>
  vec3(a.x * (1 - t) + b.x * t, a.y * (1 - t) + b.y * t, a.z * (1 - t) + b.z * t);

/** A Bézier curve of any degree by repeated division (de Casteljau). */
export const bezier =
  (...points: readonly Vec3[]): Curve =>
  (t) => {
    let row = points;
    while (row.length > 1) row = row.slice(1).map((p, i) => between(row[i], p, t));
    return row[0];
  };

/** `steps` + 1 points at equal steps of t. */
export const sample = (curve: Curve, steps: number): Vec3[] =>
  Array.from({ length: steps + 1 }, (_, i) => curve(i / steps));

/** Runs a curve backwards. */
export const backwards =
  (curve: Curve): Curve =>
  (t) =>
    curve(1 - t);

/** A smooth number through (t, value) pairs with rising t: cubic pieces, slopes from the neighbours (Catmull-Rom). */
export function through(...knots: readonly (readonly [number, number])[]): (t: number) => number {
  const slope = (i: number): number => {
    const a = knots[Math.max(0, i - 1)];
    const b = knots[Math.min(knots.length - 1, i + 1)];
    return (b[1] - a[1]) / (b[0] - a[0]);
  };
  return (t) => {
    let i = 0;
    while (i < knots.length - 2 && t > knots[i + 1][0]) i++;
    const [t0, v0] = knots[i];
    const [t1, v1] = knots[i + 1];
    const h = t1 - t0;
    const s = (t - t0) / h;
    const [m0, m1] = [slope(i) * h, slope(i + 1) * h];
    return v0 + s * (m0 + s * (3 * (v1 - v0) - 2 * m0 - m1 + s * (2 * (v0 - v1) + m0 + m1)));
  };
}
