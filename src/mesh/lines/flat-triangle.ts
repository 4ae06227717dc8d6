import { EMPTY_TRIANGLE_SHARE } from '../../base/tolerance.ts';
import { cross3, dot3, length3, sub3, type Vec2, type Vec3 } from '../../geom/vec.ts';
import type { Weights } from './mesh-point.ts';

/** A triangle of a surface in its own plane. */
export interface FlatTriangle {
  /** Points nearer than this are one, mm. */
  readonly toleranceMm: number;
  /** Where weights on its corners lie, mm: the first corner at 0, the second on +x, the third above. */
  at(weights: Weights): Vec2;
  /** The side (k, from corner k to the next) that a place is within tolerance of, and where on it, as a share; null where there is none. */
  sideNear(place: Vec2): { readonly k: number; readonly share: number } | null;
}

/** @param corners  three, counter-clockwise. An empty triangle, which has no plane, is drawn with equal sides. */
export function flatTriangle(corners: readonly Vec3[], mostMm: number, mostShare: number): FlatTriangle {
  const [toB, toC] = [sub3(corners[1], corners[0]), sub3(corners[2], corners[0])];
  const longest = Math.max(length3(toB), length3(toC), length3(sub3(toC, toB)));
  const twiceArea = length3(cross3(toB, toC));
  const base = length3(toB);
  const isEmpty = !(twiceArea > 2 * EMPTY_TRIANGLE_SHARE * longest * longest);
  const [b, c] = isEmpty
    ? [1, { x: 0.5, y: Math.sqrt(0.75) }]
    : [base, { x: dot3(toB, toC) / base, y: twiceArea / base }];
  const flat: readonly Vec2[] = [{ x: 0, y: 0 }, { x: b, y: 0 }, c];
  const leastHeight = isEmpty ? c.y : twiceArea / longest;
  const toleranceMm = Math.min(mostMm, mostShare * leastHeight);
  return {
    toleranceMm,
    at: ([_, second, third]) => ({ x: second * b + third * c.x, y: third * c.y }),
    sideNear(place) {
      for (let k = 0; k < 3; k += 1) {
        const [p, q] = [flat[k], flat[(k + 1) % 3]];
        const [dx, dy] = [q.x - p.x, q.y - p.y];
        const length = Math.hypot(dx, dy);
        const off = Math.abs((place.x - p.x) * dy - (place.y - p.y) * dx) / length;
        if (off > toleranceMm) continue;
        const share = ((place.x - p.x) * dx + (place.y - p.y) * dy) / (length * length);
        return { k, share: Math.min(1, Math.max(0, share)) };
      }
      return null;
    },
  };
}
