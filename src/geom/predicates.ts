import { orient2d as robustOrient2d, orient3d as robustOrient3d } from 'robust-predicates';

/**
 * Twice the signed area of the triangle a, b, c, mm²: positive when c lies to the left of the line from a to b (counter-clockwise),
 * negative to the right, and exactly 0 only where the three given points lie on one line. The sign is always right; the size is
 * right to rounding. Shewchuk, "Adaptive Precision Floating-Point Arithmetic and Fast Robust Geometric Predicates", 1997.
 */
export function orient2d(ax: number, ay: number, bx: number, by: number, cx: number, cy: number): number {
  // The library counts clockwise as positive (its y runs down).
  return -robustOrient2d(ax, ay, bx, by, cx, cy);
}

/**
 * Six times the signed volume of the tetrahedron a, b, c, d, mm³: positive when d lies on the side from which a, b, c run counter-clockwise,
 * negative on the other, and exactly 0 only where the four given points lie in one plane. The sign is always right. Source as {@link orient2d}.
 * @param xyz  packed coordinates that a, b and c are read from, at `a`, `b`, `c` and the two places after each.
 * @param uvw  those that d is read from.
 */
export function orient3d(
  xyz: ArrayLike<number>,
  a: number,
  b: number,
  c: number,
  uvw: ArrayLike<number>,
  d: number,
): number {
  // The library counts the other side as positive.
  return -robustOrient3d(
    xyz[a],
    xyz[a + 1],
    xyz[a + 2],
    xyz[b],
    xyz[b + 1],
    xyz[b + 2],
    xyz[c],
    xyz[c + 1],
    xyz[c + 2],
    uvw[d],
    uvw[d + 1],
    uvw[d + 2],
  );
}

/**
 * The same for two points of each list: a and b of the first, c and d of the second.
 */
export function orient3dOfSides(
  xyz: ArrayLike<number>,
  a: number,
  b: number,
  uvw: ArrayLike<number>,
  c: number,
  d: number,
): number {
  return -robustOrient3d(
    xyz[a],
    xyz[a + 1],
    xyz[a + 2],
    xyz[b],
    xyz[b + 1],
    xyz[b + 2],
    uvw[c],
    uvw[c + 1],
    uvw[c + 2],
    uvw[d],
    uvw[d + 1],
    uvw[d + 2],
  );
}

/** Share of its two products within which the difference of both may have the wrong sign: three roundings each, and room to spare. */
const UNSURE_SHARE = 16 * 2 ** -53;

/**
 * Sign of the cross product of the way from a to b with the way from c to d: 1 where the second lies to the left of the first, -1 to the right, 0
 * only where they run along one line. Always right.
 */
export function turnOfSides(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  cx: number,
  cy: number,
  dx: number,
  dy: number,
): -1 | 0 | 1 {
  const left = (bx - ax) * (dy - cy);
  const right = (by - ay) * (dx - cx);
  const size = Math.abs(left) + Math.abs(right);
  if (size > LEAST_SURE && Math.abs(left - right) > UNSURE_SHARE * size) return left > right ? 1 : -1;
  const [p, q, r, s, t, u, v, w] = [ax, ay, bx, by, cx, cy, dx, dy].map(wholeOf);
  const exact = (r - p) * (w - u) - (s - q) * (v - t);
  return exact > 0n ? 1 : exact < 0n ? -1 : 0;
}

/** Under this a product may have lost digits to the smallest number there is. */
const LEAST_SURE = 1e-280;

/** A number in units of the smallest one there is, which makes it whole. @throws RangeError unless finite. */
function wholeOf(value: number): bigint {
  if (!Number.isFinite(value)) throw new RangeError(`${value} is no place`);
  BITS.setFloat64(0, value);
  const bits = BITS.getBigUint64(0);
  const exponent = (bits >> 52n) & 0x7ffn;
  const fraction = bits & 0xfffffffffffffn;
  const size = exponent === 0n ? fraction : (fraction | 0x10000000000000n) << (exponent - 1n);
  return bits >> 63n === 1n ? -size : size;
}

const BITS = new DataView(new ArrayBuffer(8));
