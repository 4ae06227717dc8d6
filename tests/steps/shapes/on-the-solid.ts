import { cross3, length3, scale3, sub3, type Vec3 } from '../../../src/geom/vec.ts';
import type { ShapePatch } from '../../../src/model/shape.ts';

/** Half the step over which a patch is looked at from near, share of it. */
const STEP = 1e-5;

/** Vector from one side of a place to the other along (du, dv), on the finished surface and in the flat piece, lengths in mm. */
export function nearLengths(
  { solid, flat }: ShapePatch,
  u: number,
  v: number,
  du: number,
  dv: number,
): readonly [onSolid: number, inFlat: number] {
  if (flat === undefined) throw new Error('a patch that is formed has no places in the flat piece');
  const [a, b] = [-1, 1].map((sign) => [u + sign * STEP * du, v + sign * STEP * dv] as const);
  const [p, q] = [solid(...a), solid(...b)];
  const [r, s] = [flat(...a), flat(...b)];
  return [length3(sub3(q, p)), Math.hypot(s.x - r.x, s.y - r.y)];
}

const PLACES = [-0.906179845938664, -0.5384693101056831, 0, 0.5384693101056831, 0.906179845938664];
const WEIGHTS = [0.2369268850561891, 0.4786286704993665, 0.5688888888888889, 0.4786286704993665, 0.2369268850561891];

/** Area of the finished surface of a patch, mm²: Gauss's rule of five points over strips, tangents by differences. */
export function solidArea({ solid }: ShapePatch, strips = 12): number {
  let sum = 0;
  const h = 1e-5;
  const tangent = (u: number, v: number, du: number, dv: number): Vec3 =>
    scale3(sub3(solid(u + h * du, v + h * dv), solid(u - h * du, v - h * dv)), 1 / (2 * h));
  for (let i = 0; i < strips; i += 1)
    for (let j = 0; j < strips; j += 1)
      PLACES.forEach((x, a) => {
        PLACES.forEach((y, b) => {
          const [u, v] = [(i + (1 + x) / 2) / strips, (j + (1 + y) / 2) / strips];
          sum +=
            (WEIGHTS[a] * WEIGHTS[b] * length3(cross3(tangent(u, v, 1, 0), tangent(u, v, 0, 1)))) /
            (4 * strips * strips);
        });
      });
  return sum;
}
