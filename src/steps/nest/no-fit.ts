import { unionOfWhole } from '../../geom/whole-union.ts';
import { convolution } from './convolution.ts';

/** What a no-fit area is made of. */
export interface Outlined {
  /** Outer ring counter-clockwise, then holes clockwise. */
  readonly rings: readonly Float64Array[];
  /** Convex parts that cover it, counter-clockwise. */
  readonly parts: readonly Float64Array[];
}

/**
 * Where one piece must not be put because another is there: the no-fit area of two shapes. With `a` at nought, `b` at a place inside it overlaps
 * `a`, on its border touches it, outside is clear of it. The sum of `a` and of `b` turned half round (Minkowski sum; Cuninghame-Green 1989): from
 * their convolution where neither has a hole, else from all sums of convex parts.
 * @returns clean rings of whole numbers, outer ones counter-clockwise, holes (where `b` fits inside `a`) clockwise; off by half a step at most.
 */
export function noFitRings(a: Outlined, b: Outlined): readonly Float64Array[] {
  const turned = (ring: Float64Array): Float64Array => ring.map((value) => -value);
  const lines =
    a.rings.length === 1 && b.rings.length === 1
      ? convolution(a.rings[0], turned(b.rings[0]))
      : a.parts.flatMap((one) => b.parts.map((other) => convexSum(one, turned(other))));
  // Where lines lie on each other the library may leave a loop inside an area: once more joins them.
  return unionOfWhole(unionOfWhole(lines));
}

/** Sum of two convex rings: their sides in the order of their directions, from the lowest corners on. Rounded to whole numbers. */
function convexSum(a: Float64Array, b: Float64Array): Float64Array {
  const [an, bn] = [a.length / 2, b.length / 2];
  const [a0, b0] = [lowest(a), lowest(b)];
  const ring = new Float64Array(2 * (an + bn));
  let [i, j] = [0, 0];
  for (let k = 0; k < an + bn; k += 1) {
    const [p, q] = [(a0 + i) % an, (b0 + j) % bn];
    ring[2 * k] = Math.round(a[2 * p] + b[2 * q]);
    ring[2 * k + 1] = Math.round(a[2 * p + 1] + b[2 * q + 1]);
    if (i === an) j += 1;
    else if (j === bn) i += 1;
    else {
      const [p1, q1] = [(p + 1) % an, (q + 1) % bn];
      const turn =
        (a[2 * p1] - a[2 * p]) * (b[2 * q1 + 1] - b[2 * q + 1]) -
        (a[2 * p1 + 1] - a[2 * p + 1]) * (b[2 * q1] - b[2 * q]);
      if (turn >= 0) i += 1;
      else j += 1;
    }
  }
  return ring;
}

/** Number of the lowest corner, the leftmost of equals. */
function lowest(ring: Float64Array): number {
  let best = 0;
  for (let i = 1; i < ring.length / 2; i += 1) {
    const dy = ring[2 * i + 1] - ring[2 * best + 1];
    if (dy < 0 || (dy === 0 && ring[2 * i] < ring[2 * best])) best = i;
  }
  return best;
}
