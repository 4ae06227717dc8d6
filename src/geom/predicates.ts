import { orient2d as robustOrient2d } from 'robust-predicates';

/**
 * Twice the signed area of the triangle a, b, c, mm²: positive when c lies to the left of the line from a to b (counter-clockwise),
 * negative to the right, and exactly 0 only where the three given points lie on one line. The sign is always right; the size is
 * right to rounding. Shewchuk, "Adaptive Precision Floating-Point Arithmetic and Fast Robust Geometric Predicates", 1997.
 */
export function orient2d(ax: number, ay: number, bx: number, by: number, cx: number, cy: number): number {
  // The library counts clockwise as positive (its y runs down).
  return -robustOrient2d(ax, ay, bx, by, cx, cy);
}
