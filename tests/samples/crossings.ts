import { cross3, dot3, sub3, type Vec3 } from '../../src/geom/vec.ts';
import type { Triangle } from './read-sample.ts';

/** Where the line from `from` along `along` meets the triangle, as a multiple of `along`; NaN where it does not. (Möller and Trumbore 1997.) */
export function rayHit(from: Vec3, along: Vec3, [a, b, c]: Triangle): number {
  const [ab, ac] = [sub3(b, a), sub3(c, a)];
  const p = cross3(along, ac);
  const det = dot3(ab, p);
  if (det === 0) return NaN;
  const s = sub3(from, a);
  const u = dot3(s, p) / det;
  const q = cross3(s, ab);
  const v = dot3(along, q) / det;
  return u >= 0 && v >= 0 && u + v <= 1 ? dot3(ac, q) / det : NaN;
}

const isSharing = (s: Triangle, t: Triangle): boolean => s.some((p) => t.includes(p));

function isApart(s: Triangle, t: Triangle): boolean {
  return (['x', 'y', 'z'] as const).some((k) => {
    const [sv, tv] = [s.map((p) => p[k]), t.map((p) => p[k])];
    return Math.max(...sv) < Math.min(...tv) || Math.max(...tv) < Math.min(...sv);
  });
}

/** Pairs of triangles that cut through each other. Pairs with a common corner (the same object) are left out. */
export function crossings(triangles: readonly Triangle[]): [number, number][] {
  const found: [number, number][] = [];
  const cuts = (s: Triangle, t: Triangle): boolean =>
    s.some((p, k) => {
      const hit = rayHit(p, sub3(s[(k + 1) % 3], p), t);
      return hit >= 0 && hit <= 1;
    });
  for (let i = 0; i < triangles.length; i++) {
    for (let j = i + 1; j < triangles.length; j++) {
      const [s, t] = [triangles[i], triangles[j]];
      if (isApart(s, t) || isSharing(s, t)) continue;
      if (cuts(s, t) || cuts(t, s)) found.push([i, j]);
    }
  }
  return found;
}
