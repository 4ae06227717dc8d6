/** The matrix being turned and the turns so far, row by row: one of each for all calls, because they are made by the ten thousand. */
const a = new Float64Array(9);
const v = new Float64Array(9);

/**
 * Eigenvalues and eigenvectors of a symmetric 3 x 3 matrix by Jacobi's rotations (1846): slow but exact to rounding, and it never fails.
 * @param m  the six values xx, xy, xz, yy, yz, zz.
 * @returns values, largest first, and for each its unit vector as x y z.
 */
export function eigen3(m: ArrayLike<number>): { values: number[]; vectors: number[][] } {
  a[0] = m[0];
  a[1] = a[3] = m[1];
  a[2] = a[6] = m[2];
  a[4] = m[3];
  a[5] = a[7] = m[4];
  a[8] = m[5];
  v.fill(0);
  v[0] = v[4] = v[8] = 1;
  for (let sweep = 0; sweep < 50; sweep += 1) {
    const off = Math.abs(a[1]) + Math.abs(a[2]) + Math.abs(a[5]);
    if (off === 0) break;
    rotate(0, 1);
    rotate(0, 2);
    rotate(1, 2);
  }
  const order = [0, 1, 2].sort((i, j) => a[4 * j] - a[4 * i]);
  return {
    values: order.map((i) => a[4 * i]),
    vectors: order.map((i) => [v[i], v[3 + i], v[6 + i]]),
  };
}

/** Turns the plane of axes p, q so that the off-diagonal value there becomes 0. */
function rotate(p: number, q: number): void {
  const between = a[3 * p + q];
  if (between === 0) return;
  const theta = (a[4 * q] - a[4 * p]) / (2 * between);
  const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.hypot(theta, 1));
  const c = 1 / Math.hypot(t, 1);
  const s = t * c;
  for (let k = 0; k < 9; k += 3) turnPair(a, k + p, k + q, c, s);
  for (let k = 0; k < 3; k += 1) {
    turnPair(a, 3 * p + k, 3 * q + k, c, s);
    turnPair(v, 3 * k + p, 3 * k + q, c, s);
  }
  a[3 * p + q] = 0;
  a[3 * q + p] = 0;
}

function turnPair(values: Float64Array, p: number, q: number, c: number, s: number): void {
  const [x, y] = [values[p], values[q]];
  values[p] = c * x - s * y;
  values[q] = s * x + c * y;
}
