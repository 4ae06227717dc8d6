import type { Ring } from './ring.ts';
import type { Vec2 } from './vec.ts';

/** Signed distances along a line from a point at which it crosses rings, in no order. @param along  length 1. */
export function crossingsOf(rings: readonly Ring[], p: Vec2, along: Vec2): number[] {
  const found: number[] = [];
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i += 2) {
      const j = (i + 2) % ring.length;
      const [ax, ay, bx, by] = [ring[i] - p.x, ring[i + 1] - p.y, ring[j] - p.x, ring[j + 1] - p.y];
      const [sideA, sideB] = [along.x * ay - along.y * ax, along.x * by - along.y * bx];
      if (sideA > 0 === sideB > 0) continue;
      const share = sideA / (sideA - sideB);
      found.push(along.x * (ax + share * (bx - ax)) + along.y * (ay + share * (by - ay)));
    }
  }
  return found;
}
