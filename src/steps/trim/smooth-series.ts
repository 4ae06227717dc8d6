/**
 * Smooths evenly spaced values: the series of least squares distance from them plus `weight` times the sum of its squared third differences, so that
 * parabolas stay as they are (Whittaker, "On a new method of graduation", 1923; as a banded solve: Eilers, "A perfect smoother", Analytical Chemistry 75,
 * 2003). Waves are kept by the share `1 / (1 + weight (2 sin(pi / n))^6)`, n their length in steps: half of those as long as `smoothWeight` is asked for,
 * all but 2 per cent of twice as long ones.
 * @param rows    series of one length, at least 4; each is smoothed by itself.
 * @param weight  0 or more.
 */
export function smoothSeries(rows: readonly Float64Array[], weight: number): Float64Array[] {
  const n = rows[0].length;
  if (n < 4 || weight === 0) return rows.map((row) => row.slice());
  // I + weight D'D, its diagonal and the three beside it; D = third differences.
  const band = [0, 1, 2, 3].map(() => new Float64Array(n));
  const difference = [-1, 3, -3, 1];
  band[0].fill(1);
  for (let i = 0; i + 3 < n; i += 1)
    for (let a = 0; a < 4; a += 1)
      for (let b = a; b < 4; b += 1) band[b - a][i + a] += weight * difference[a] * difference[b];
  // L D L' of it: band[k][i] becomes the factor from row i to row i + k.
  for (let i = 0; i < n; i += 1) {
    for (let k = 1; k <= 3 && i + k < n; k += 1) {
      const factor = band[k][i] / band[0][i];
      for (let m = k; m <= 3 && i + m < n; m += 1) band[m - k][i + k] -= factor * band[m][i];
    }
    for (let k = 1; k <= 3; k += 1) band[k][i] /= band[0][i];
  }
  return rows.map((row) => {
    const x = row.slice();
    for (let i = 0; i < n; i += 1) for (let k = 1; k <= 3 && i + k < n; k += 1) x[i + k] -= band[k][i] * x[i];
    for (let i = n - 1; i >= 0; i -= 1) {
      x[i] /= band[0][i];
      for (let k = 1; k <= 3 && i + k < n; k += 1) x[i] -= band[k][i] * x[i + k];
    }
    return x;
  });
}

/** The weight that halves waves of so many steps. */
export const smoothWeight = (steps: number): number => 1 / (2 * Math.sin(Math.PI / Math.max(2, steps))) ** 6;
