/** Share of a matrix's greatest element under which a pivot counts as nought: rounding, times the size. */
const NOUGHT_SHARE = 1e-11;

/** Solves a few linear equations by Gauss's elimination with partial pivoting. @returns null where the rows do not settle it. */
export function solveSquare(rows: readonly (readonly number[])[], right: readonly number[]): number[] | null {
  const n = rows.length;
  const m = rows.map((row, i) => [...row, right[i]]);
  const nought = NOUGHT_SHARE * Math.max(...rows.flatMap((row) => row.map(Math.abs)));
  for (let k = 0; k < n; k += 1) {
    let pivot = k;
    for (let i = k + 1; i < n; i += 1) if (Math.abs(m[i][k]) > Math.abs(m[pivot][k])) pivot = i;
    if (!(Math.abs(m[pivot][k]) > nought)) return null;
    [m[k], m[pivot]] = [m[pivot], m[k]];
    for (let i = k + 1; i < n; i += 1) {
      const share = m[i][k] / m[k][k];
      for (let j = k; j <= n; j += 1) m[i][j] -= share * m[k][j];
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let k = n - 1; k >= 0; k -= 1) {
    let sum = m[k][n];
    for (let j = k + 1; j < n; j += 1) sum -= m[k][j] * x[j];
    x[k] = sum / m[k][k];
  }
  return x;
}
