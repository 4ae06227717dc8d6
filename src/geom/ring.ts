/**
 * A ring is a closed polygon as packed x, y (mm), without a repeated last point. Outer rings run counter-clockwise, holes clockwise.
 */
export type Ring = Float64Array;

/** The ring of some of packed points, in the order of their numbers. */
export const ringOfPoints = (xy: ArrayLike<number>, points: Uint32Array): Ring =>
  Float64Array.from({ length: 2 * points.length }, (_, i) => xy[2 * points[i >> 1] + (i & 1)]);

/** Signed area, mm²; positive when the ring runs counter-clockwise. Sums about the first point, so far-away rings keep their digits. */
export function ringArea(ring: ArrayLike<number>): number {
  let twice = 0;
  const x0 = ring[0] ?? 0;
  const y0 = ring[1] ?? 0;
  for (let i = 2; i + 3 < ring.length; i += 2) {
    twice += (ring[i] - x0) * (ring[i + 3] - y0) - (ring[i + 2] - x0) * (ring[i + 1] - y0);
  }
  return twice / 2;
}

/** Length round the ring, mm. */
export function ringLength(ring: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < ring.length; i += 2) {
    const j = (i + 2) % ring.length;
    sum += Math.hypot(ring[j] - ring[i], ring[j + 1] - ring[i + 1]);
  }
  return sum;
}

/** Upright rectangle, mm. */
export interface Box2 {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** The smallest upright box round packed points; an empty list gives an inside-out box. */
export function boxOfPoints(xy: ArrayLike<number>): Box2 {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (let i = 0; i + 1 < xy.length; i += 2) {
    minX = Math.min(minX, xy[i]);
    maxX = Math.max(maxX, xy[i]);
    minY = Math.min(minY, xy[i + 1]);
    maxY = Math.max(maxY, xy[i + 1]);
  }
  return { minX, minY, maxX, maxY };
}

/** The smallest box round both. */
export function joinBoxes(a: Box2, b: Box2): Box2 {
  return {
    minX: Math.min(a.minX, b.minX),
    minY: Math.min(a.minY, b.minY),
    maxX: Math.max(a.maxX, b.maxX),
    maxY: Math.max(a.maxY, b.maxY),
  };
}
