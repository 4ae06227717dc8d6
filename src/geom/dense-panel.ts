import type { DenseRoom } from './dense-room.ts';

/** Columns that are factored one by one before the rest of the panel is brought up to date in tiles. */
export const PANEL_STEP = 8;

/**
 * One step in turning the upper square of a panel into its Cholesky factor L and the rows under it into what they are over L's transpose:
 * the next columns, all columns before them being done. Diagonal entries of L are stored as their reciprocals. Entries right of the
 * diagonal are used as scratch.
 * @param room     holds the panel, from `at` on, row by row.
 * @param rows     rows of the panel, at least `columns`.
 * @param columns  columns of the panel and length of a stored row.
 * @param from     first column of the step, a multiple of {@link PANEL_STEP}.
 * @returns false where a pivot is not positive: the matrix is not positive definite. The panel is then half done.
 */
export function factorColumns(room: DenseRoom, at: number, rows: number, columns: number, from: number): boolean {
  const to = Math.min(columns, from + PANEL_STEP);
  if (from > 0) {
    const top = at + from * columns;
    room.subtract(top + from, columns, top, columns, rows - from, top, columns, to - from, from, false);
  }
  if (!factorStep(room.numbers, at, columns, from, to)) return false;
  solveRows(room.numbers, at, columns, from, to, to, rows);
  return true;
}

/** Cholesky of the square of rows and columns `from .. to`, everything left of it being accounted for. */
function factorStep(a: Float64Array, at: number, stride: number, from: number, to: number): boolean {
  for (let i = from; i < to; i += 1) {
    const row = at + i * stride;
    for (let j = from; j < i; j += 1) {
      const other = at + j * stride;
      let sum = a[row + j];
      for (let p = from; p < j; p += 1) sum -= a[row + p] * a[other + p];
      a[row + j] = sum * a[other + j];
    }
    let pivot = a[row + i];
    for (let p = from; p < i; p += 1) pivot -= a[row + p] * a[row + p];
    if (!(pivot > 0 && pivot < Infinity)) return false;
    a[row + i] = 1 / Math.sqrt(pivot);
  }
  return true;
}

/** Divides rows `top .. end` of columns `from .. to` by the factor of that square, from the right; four rows at a time. */
function solveRows(
  a: Float64Array,
  at: number,
  stride: number,
  from: number,
  to: number,
  top: number,
  end: number,
): void {
  let i = top;
  for (; i + 3 < end; i += 4) {
    const r0 = at + i * stride;
    const r1 = r0 + stride;
    const r2 = r1 + stride;
    const r3 = r2 + stride;
    for (let j = from; j < to; j += 1) {
      const other = at + j * stride;
      let s0 = a[r0 + j];
      let s1 = a[r1 + j];
      let s2 = a[r2 + j];
      let s3 = a[r3 + j];
      for (let p = from; p < j; p += 1) {
        const y = a[other + p];
        s0 -= a[r0 + p] * y;
        s1 -= a[r1 + p] * y;
        s2 -= a[r2 + p] * y;
        s3 -= a[r3 + p] * y;
      }
      const inverse = a[other + j];
      a[r0 + j] = s0 * inverse;
      a[r1 + j] = s1 * inverse;
      a[r2 + j] = s2 * inverse;
      a[r3 + j] = s3 * inverse;
    }
  }
  for (; i < end; i += 1) {
    const row = at + i * stride;
    for (let j = from; j < to; j += 1) {
      const other = at + j * stride;
      let sum = a[row + j];
      for (let p = from; p < j; p += 1) sum -= a[row + p] * a[other + p];
      a[row + j] = sum * a[other + j];
    }
  }
}
