import { vec3, type Vec3 } from '../../src/geom/vec.ts';
import type { Grid } from './cells.ts';
import { between } from './curves.ts';

/** Straight rulings from `top` to `bottom` (the same number of points), with points at the given fractions of the way down. */
export const ruledGrid = (top: readonly Vec3[], bottom: readonly Vec3[], fractions: readonly number[]): Grid =>
  fractions.map((t) => top.map((p, c) => between(p, bottom[c], t)));

/** 0, 1/rows, … 1. */
export const evenly = (rows: number): number[] => Array.from({ length: rows + 1 }, (_, i) => i / rows);

/**
 * Fills four rows of points, each pair of opposite ones of the same length and corners shared:
 * the bilinearly blended patch of S. A. Coons (Surfaces for computer-aided design of space forms, 1967).
 *
 *          top
 *     left     right       rows run downwards, columns to the right, seen from outside
 *         bottom
 */
export function coonsGrid(
  top: readonly Vec3[],
  bottom: readonly Vec3[],
  left: readonly Vec3[],
  right: readonly Vec3[],
): Grid {
  const rows = left.length - 1;
  const columns = top.length - 1;
  return left.map((_, r) =>
    top.map((__, c) => {
      if (r === 0) return top[c];
      if (r === rows) return bottom[c];
      if (c === 0) return left[r];
      if (c === columns) return right[r];
      const v = r / rows;
      const u = c / columns;
      const down = between(top[c], bottom[c], v);
      const over = between(left[r], right[r], u);
      const corners = between(between(top[0], top[columns], u), between(bottom[0], bottom[columns], u), v);
      return vec3(down.x + over.x - corners.x, down.y + over.y - corners.y, down.z + over.z - corners.z);
    }),
  );
}
