import { cross3, dot3, pointAt3, sub3, type Vec2, type Vec3 } from '../../geom/vec.ts';
import type { Surface } from '../surface.ts';
import type { Weights } from './mesh-point.ts';

/**
 * A drawing plane in front of a surface. `u` and `v` have length 1 and are square to each other; one looks against u x v. Places of the
 * drawing are in mm along u and v from the origin. Without an eye all lines of sight are parallel; with one, in front of the plane, they start there.
 */
export interface DrawingView {
  readonly origin: Vec3;
  readonly u: Vec3;
  readonly v: Vec3;
  readonly eye?: Vec3;
}

/** A surface as it is seen on the drawing plane. */
export interface SeenSurface {
  /** Where each vertex is seen, mm. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Grows with the distance from who looks, and evenly along every straight line of the drawing over a triangle. */
  readonly depth: Float64Array;
  /** How much the nearer is enlarged: weights seen, divided by it and brought to sum 1, are weights on the surface. 1 without an eye; <= 0 behind it. */
  readonly range: Float64Array;
}

/** @throws RangeError where the eye is not in front of the plane. */
export function seeSurface({ positions }: Surface, { origin, u, v, eye }: DrawingView): SeenSurface {
  const towards = cross3(u, v);
  const count = positions.length / 3;
  const [x, y, depth, range] = [0, 1, 2, 3].map(() => new Float64Array(count));
  const from = eye === undefined ? null : sub3(eye, origin);
  const height = from === null ? 0 : dot3(from, towards);
  if (from !== null && !(height > 0)) throw new RangeError('drawing view: the eye is not in front of the plane');
  const [ex, ey] = from === null ? [0, 0] : [dot3(from, u), dot3(from, v)];
  for (let i = 0; i < count; i += 1) {
    const way = sub3(pointAt3(positions, i), origin);
    const [px, py, pz] = [dot3(way, u), dot3(way, v), dot3(way, towards)];
    if (from === null) [x[i], y[i], depth[i], range[i]] = [px, py, -pz, 1];
    else {
      // The line of sight meets the plane after height / range of its way.
      range[i] = height - pz;
      const share = height / range[i];
      [x[i], y[i]] = [ex + (px - ex) * share, ey + (py - ey) * share];
      depth[i] = -1 / range[i];
    }
  }
  return { x, y, depth, range };
}

/** Share along an edge of the surface, from the vertex `a` to `b`, of a place seen at a share of it. */
export function shareOnSurface({ range }: SeenSurface, a: number, b: number, seen: number): number {
  if (range[a] === range[b]) return seen;
  return (seen * range[a]) / ((1 - seen) * range[b] + seen * range[a]);
}

/** Weights on a triangle of the surface of a place seen with other weights. */
export function weightsOnSurface({ range }: SeenSurface, corners: readonly number[], seen: Weights): Weights {
  const [a, b, c] = seen.map((weight, k) => weight / range[corners[k]]);
  const sum = a + b + c;
  return [a / sum, b / sum, c / sum];
}

/** The place of the drawing as a point in space. */
export const placeOnDrawing = ({ origin, u, v }: DrawingView, { x, y }: Vec2): Vec3 => ({
  x: origin.x + x * u.x + y * v.x,
  y: origin.y + x * u.y + y * v.y,
  z: origin.z + x * u.z + y * v.z,
});
