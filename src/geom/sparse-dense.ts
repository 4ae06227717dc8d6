/**
 * The dense arithmetic inside a sparse factorisation, on matrices packed row by row in a longer array. Products are sums along rows, in
 * tiles of four by four, so that sixteen sums stay in registers while eight numbers are read.
 */

/** Columns that are factored one by one before the rest of the panel is brought up to date in tiles. */
const PANEL_STEP = 8;

/**
 * Turns the upper square of a panel into its Cholesky factor L and the rows under it into what they are over L's transpose.
 * Diagonal entries of L are stored as their reciprocals. Entries right of the diagonal are used as scratch.
 * @param at       where the panel begins in `a`.
 * @param rows     rows of the panel, at least `columns`.
 * @param columns  columns of the panel and length of a stored row.
 * @returns false where a pivot is not positive: the matrix is not positive definite. The panel is then half done.
 */
export function factorPanel(a: Float64Array, at: number, rows: number, columns: number): boolean {
  for (let from = 0; from < columns; from += PANEL_STEP) {
    const to = Math.min(columns, from + PANEL_STEP);
    if (from > 0) {
      const top = at + from * columns;
      subtractProducts(a, top + from, columns, a, top, columns, rows - from, a, top, columns, to - from, from, false);
    }
    if (!factorStep(a, at, columns, from, to)) return false;
    solveRows(a, at, columns, from, to, to, rows);
  }
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

/**
 * C -= A B^T, with C of `aRows` x `bRows` at `cAt`, A of `aRows` x `depth`, B of `bRows` x `depth`.
 * @param lower  only the part on and left of the diagonal is wanted; what lies right of it may or may not be changed.
 */
export function subtractProducts(
  c: Float64Array,
  cAt: number,
  cStride: number,
  a: Float64Array,
  aAt: number,
  aStride: number,
  aRows: number,
  b: Float64Array,
  bAt: number,
  bStride: number,
  bRows: number,
  depth: number,
  lower: boolean,
): void {
  let i = 0;
  for (; i + 3 < aRows; i += 4) {
    const a0 = aAt + i * aStride;
    const a1 = a0 + aStride;
    const a2 = a1 + aStride;
    const a3 = a2 + aStride;
    const columns = lower ? Math.min(bRows, i + 4) : bRows;
    let j = 0;
    for (; j + 3 < columns; j += 4) {
      const b0 = bAt + j * bStride;
      const b1 = b0 + bStride;
      const b2 = b1 + bStride;
      const b3 = b2 + bStride;
      let s00 = 0,
        s01 = 0,
        s02 = 0,
        s03 = 0;
      let s10 = 0,
        s11 = 0,
        s12 = 0,
        s13 = 0;
      let s20 = 0,
        s21 = 0,
        s22 = 0,
        s23 = 0;
      let s30 = 0,
        s31 = 0,
        s32 = 0,
        s33 = 0;
      for (let p = 0; p < depth; p += 1) {
        const x0 = a[a0 + p];
        const x1 = a[a1 + p];
        const x2 = a[a2 + p];
        const x3 = a[a3 + p];
        let y = b[b0 + p];
        s00 += x0 * y;
        s10 += x1 * y;
        s20 += x2 * y;
        s30 += x3 * y;
        y = b[b1 + p];
        s01 += x0 * y;
        s11 += x1 * y;
        s21 += x2 * y;
        s31 += x3 * y;
        y = b[b2 + p];
        s02 += x0 * y;
        s12 += x1 * y;
        s22 += x2 * y;
        s32 += x3 * y;
        y = b[b3 + p];
        s03 += x0 * y;
        s13 += x1 * y;
        s23 += x2 * y;
        s33 += x3 * y;
      }
      let to = cAt + i * cStride + j;
      c[to] -= s00;
      c[to + 1] -= s01;
      c[to + 2] -= s02;
      c[to + 3] -= s03;
      to += cStride;
      c[to] -= s10;
      c[to + 1] -= s11;
      c[to + 2] -= s12;
      c[to + 3] -= s13;
      to += cStride;
      c[to] -= s20;
      c[to + 1] -= s21;
      c[to + 2] -= s22;
      c[to + 3] -= s23;
      to += cStride;
      c[to] -= s30;
      c[to + 1] -= s31;
      c[to + 2] -= s32;
      c[to + 3] -= s33;
    }
    for (; j < columns; j += 1) {
      const b0 = bAt + j * bStride;
      let s0 = 0,
        s1 = 0,
        s2 = 0,
        s3 = 0;
      for (let p = 0; p < depth; p += 1) {
        const y = b[b0 + p];
        s0 += a[a0 + p] * y;
        s1 += a[a1 + p] * y;
        s2 += a[a2 + p] * y;
        s3 += a[a3 + p] * y;
      }
      const to = cAt + i * cStride + j;
      c[to] -= s0;
      c[to + cStride] -= s1;
      c[to + 2 * cStride] -= s2;
      c[to + 3 * cStride] -= s3;
    }
  }
  for (; i < aRows; i += 1) {
    const a0 = aAt + i * aStride;
    const columns = lower ? Math.min(bRows, i + 1) : bRows;
    let j = 0;
    for (; j + 3 < columns; j += 4) {
      const b0 = bAt + j * bStride;
      const b1 = b0 + bStride;
      const b2 = b1 + bStride;
      const b3 = b2 + bStride;
      let s0 = 0,
        s1 = 0,
        s2 = 0,
        s3 = 0;
      for (let p = 0; p < depth; p += 1) {
        const x = a[a0 + p];
        s0 += x * b[b0 + p];
        s1 += x * b[b1 + p];
        s2 += x * b[b2 + p];
        s3 += x * b[b3 + p];
      }
      const to = cAt + i * cStride + j;
      c[to] -= s0;
      c[to + 1] -= s1;
      c[to + 2] -= s2;
      c[to + 3] -= s3;
    }
    for (; j < columns; j += 1) {
      const b0 = bAt + j * bStride;
      let sum = 0;
      for (let p = 0; p < depth; p += 1) sum += a[a0 + p] * b[b0 + p];
      c[cAt + i * cStride + j] -= sum;
    }
  }
}
