import { ringArea, type Ring } from './ring.ts';

/**
 * The convex hull of packed points, counter-clockwise, beginning at the leftmost (lowest of equals); points on its sides are left out.
 * Monotone chain (Andrew, Inf. Proc. Letters 9(5), 1979).
 */
export function convexHull(xy: ArrayLike<number>): Ring {
  const order = Array.from({ length: Math.floor(xy.length / 2) }, (_, i) => i).sort(
    (i, j) => xy[2 * i] - xy[2 * j] || xy[2 * i + 1] - xy[2 * j + 1],
  );
  const half = (points: readonly number[]): number[] => {
    const chain: number[] = [];
    for (const i of points) {
      while (chain.length >= 2 && leftTurn(xy, chain[chain.length - 2], chain[chain.length - 1], i) <= 0) chain.pop();
      chain.push(i);
    }
    return chain.slice(0, -1);
  };
  const hull = [...half(order), ...half(order.slice().reverse())];
  return Float64Array.from(hull.flatMap((i) => [xy[2 * i], xy[2 * i + 1]]));
}

const leftTurn = (xy: ArrayLike<number>, a: number, b: number, c: number): number =>
  ringArea([xy[2 * a], xy[2 * a + 1], xy[2 * b], xy[2 * b + 1], xy[2 * c], xy[2 * c + 1]]);

/** A rectangle's sides and where they run. */
export interface TightBox {
  /** Direction of the long side, length 1, to the right (or straight up). */
  readonly x: number;
  readonly y: number;
  readonly longMm: number;
  readonly shortMm: number;
}

/** Boxes whose areas differ by less than this share are equal: then the first side of the hull decides. */
const SAME_AREA_SHARE = 1e-9;

/** The rectangle of least area round packed points; one of its sides lies on a side of the hull (Freeman and Shapira, CACM 18(7), 1975). */
export function tightBox(xy: ArrayLike<number>): TightBox {
  const hull = convexHull(xy);
  let best: TightBox = { x: 1, y: 0, longMm: 0, shortMm: 0 };
  let bestArea = Infinity;
  for (let i = 0; i < hull.length; i += 2) {
    const j = (i + 2) % hull.length;
    const [dx, dy] = [hull[j] - hull[i], hull[j + 1] - hull[i + 1]];
    const length = Math.hypot(dx, dy);
    if (length === 0) continue;
    const [ux, uy] = [dx / length, dy / length];
    const along = extent(hull, ux, uy);
    const across = extent(hull, -uy, ux);
    if (along * across >= bestArea * (1 - SAME_AREA_SHARE)) continue;
    bestArea = along * across;
    const [x, y] = along >= across ? [ux, uy] : [-uy, ux];
    const isRight = x > 0 || (x === 0 && y > 0);
    best = {
      x: isRight ? x : -x,
      y: isRight ? y : -y,
      longMm: Math.max(along, across),
      shortMm: Math.min(along, across),
    };
  }
  return best;
}

function extent(xy: Ring, ux: number, uy: number): number {
  let [low, high] = [Infinity, -Infinity];
  for (let i = 0; i < xy.length; i += 2) {
    const at = xy[i] * ux + xy[i + 1] * uy;
    low = Math.min(low, at);
    high = Math.max(high, at);
  }
  return high - low;
}
