import type { Ring } from '../../geom/ring.ts';
import { vec2, type Vec2 } from '../../geom/vec.ts';

/** More corners than this are thinned out evenly: two dowels need not stand farthest apart to the last 0.1 mm. */
const MOST_CORNERS = 400;

/** The two corners of rings that stand farthest apart; the first of equals. */
export function farthestCorners(rings: readonly Ring[]): readonly [Vec2, Vec2] {
  const ring = rings.length === 1 ? rings[0] : Float64Array.from(rings.flatMap((one) => [...one]));
  const count = ring.length / 2;
  const step = Math.max(1, Math.ceil(count / MOST_CORNERS));
  let best: readonly [number, number] = [0, 0];
  let square = -1;
  for (let i = 0; i < count; i += step) {
    for (let j = i + step; j < count; j += step) {
      const own = (ring[2 * i] - ring[2 * j]) ** 2 + (ring[2 * i + 1] - ring[2 * j + 1]) ** 2;
      // A tie within rounding keeps the first, so that turning the model turns the dowels with it.
      if (own <= square * (1 + 1e-9)) continue;
      square = own;
      best = [i, j];
    }
  }
  return [at(ring, best[0]), at(ring, best[1])];
}

const at = (ring: Ring, i: number): Vec2 => vec2(ring[2 * i], ring[2 * i + 1]);
