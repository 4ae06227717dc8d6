/**
 * Products of matrices packed row by row in a longer array. They are sums along rows, in tiles of four by four, so that sixteen sums stay
 * in registers while eight numbers are read.
 */

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
