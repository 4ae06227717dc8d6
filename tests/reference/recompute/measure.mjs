/** Lengths, areas and the stretch of one triangle, each by a short formula of its own. Points are arrays of numbers, mm. */

export const minus = (a, b) => a.map((x, i) => x - b[i]);
export const dot = (a, b) => a.reduce((sum, x, i) => sum + x * b[i], 0);
export const distance = (a, b) => Math.hypot(...minus(a, b));

/** Signed area of a flat triangle, counter-clockwise > 0. */
export function flatArea([a, b, c]) {
  const [ux, uy] = minus(b, a);
  const [vx, vy] = minus(c, a);
  return (ux * vy - uy * vx) / 2;
}

/**
 * Area from the three side lengths, by Heron's formula in the order that keeps needles exact
 * (W. Kahan, Miscalculating Area and Angles of a Needle-like Triangle).
 */
export function spaceArea([p, q, r]) {
  const [c, b, a] = [distance(p, q), distance(q, r), distance(r, p)].sort((x, y) => x - y);
  return Math.sqrt(Math.max(0, (a + (b + c)) * (c - (a - b)) * (c + (a - b)) * (a + (b - c)))) / 4;
}

/** Signed area inside a ring of points, counter-clockwise > 0. */
export function ringArea(ring) {
  const [x0, y0] = ring[0];
  let twice = 0;
  for (let i = 0; i < ring.length; i += 1) {
    const [x1, y1] = ring[i];
    const [x2, y2] = ring[(i + 1) % ring.length];
    twice += (x1 - x0) * (y2 - y0) - (x2 - x0) * (y1 - y0);
  }
  return twice / 2;
}

/**
 * Singular values of the linear map that takes a flat triangle to the one in space.
 *
 * The space triangle is laid in its own plane with its first side along x, so the map is a 2 x 2 matrix (m00 m01; m10 m11). Such a
 * matrix is a turn and growth by `keep` plus a mirrored one by `mirror`; the longest image of the unit circle is where both point the
 * same way, the shortest where they oppose: a = keep + mirror, b = |keep - mirror|.
 * @returns {[number, number]} the larger, then the smaller; a flipped triangle has its own positive values
 */
export function singularValues([f0, f1, f2], [p0, p1, p2]) {
  const side = minus(p1, p0);
  const other = minus(p2, p0);
  const length = Math.hypot(...side);
  const along = dot(other, side) / length;
  const across = Math.hypot(
    ...minus(
      other,
      side.map((x) => (x * along) / length),
    ),
  );
  const [ux, uy] = minus(f1, f0);
  const [vx, vy] = minus(f2, f0);
  const det = ux * vy - uy * vx;
  const m00 = (length * vy - along * uy) / det;
  const m01 = (along * ux - length * vx) / det;
  const m10 = (-across * uy) / det;
  const m11 = (across * ux) / det;
  const keep = Math.hypot(m00 + m11, m10 - m01) / 2;
  const mirror = Math.hypot(m00 - m11, m10 + m01) / 2;
  return [keep + mirror, Math.abs(keep - mirror)];
}

/** Symmetric Dirichlet energy of singular values, 4 for an isometry (Smith and Schaefer 2015). */
export const symmetricDirichlet = (a, b) => a * a + b * b + 1 / (a * a) + 1 / (b * b);

/** Largest value, smallest value that 99 % of the weight does not exceed, and weighted mean. */
export function spreadOf(values, weights) {
  const order = values.map((_, i) => i).sort((i, j) => values[i] - values[j]);
  const total = weights.reduce((sum, w) => sum + w, 0);
  let sum = 0;
  let p99 = values[order.at(-1)];
  for (const i of order) {
    sum += weights[i];
    if (sum >= 0.99 * total) {
      p99 = values[i];
      break;
    }
  }
  return {
    max: values[order.at(-1)],
    p99,
    mean: values.reduce((acc, value, i) => acc + value * weights[i], 0) / total,
  };
}
