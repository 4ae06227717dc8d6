import { add3, dot3, length3, pointAt3, scale3, sub3, type Vec3 } from './vec.ts';

/** Distance of a point from triangle `t` (C. Ericson, Real-Time Collision Detection, 2005, section 5.1.5). */
export function distanceToTriangle(positions: ArrayLike<number>, triangles: Uint32Array, t: number, p: Vec3): number {
  const [a, b, c] = [0, 1, 2].map((k) => pointAt3(positions, triangles[3 * t + k]));
  return length3(sub3(p, nearestOnTriangle(p, a, b, c)));
}

function nearestOnTriangle(p: Vec3, a: Vec3, b: Vec3, c: Vec3): Vec3 {
  const [ab, ac, ap] = [sub3(b, a), sub3(c, a), sub3(p, a)];
  const [d1, d2] = [dot3(ab, ap), dot3(ac, ap)];
  if (d1 <= 0 && d2 <= 0) return a;
  const bp = sub3(p, b);
  const [d3, d4] = [dot3(ab, bp), dot3(ac, bp)];
  if (d3 >= 0 && d4 <= d3) return b;
  const vc = d1 * d4 - d3 * d2;
  if (vc <= 0 && d1 >= 0 && d3 <= 0) return add3(a, scale3(ab, d1 / (d1 - d3)));
  const cp = sub3(p, c);
  const [d5, d6] = [dot3(ab, cp), dot3(ac, cp)];
  if (d6 >= 0 && d5 <= d6) return c;
  const vb = d5 * d2 - d1 * d6;
  if (vb <= 0 && d2 >= 0 && d6 <= 0) return add3(a, scale3(ac, d2 / (d2 - d6)));
  const va = d3 * d6 - d5 * d4;
  if (va <= 0 && d4 - d3 >= 0 && d5 - d6 >= 0) return add3(b, scale3(sub3(c, b), (d4 - d3) / (d4 - d3 + (d5 - d6))));
  const sum = va + vb + vc;
  return add3(a, add3(scale3(ab, vb / sum), scale3(ac, vc / sum)));
}
