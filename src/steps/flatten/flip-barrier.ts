/**
 * How far the flat corners may go along a direction before the first triangle loses its area: per triangle the smallest positive root of a
 * quadratic (Smith and Schaefer 2015, section 3.3). Infinity when none ever does.
 */
export function firstFlip(triangles: Uint32Array, flat: Float64Array, direction: Float64Array): number {
  let first = Infinity;
  for (let t = 0; t < triangles.length; t += 3) {
    const [i, j, k] = [2 * triangles[t], 2 * triangles[t + 1], 2 * triangles[t + 2]];
    const [x1, y1, x2, y2] = [
      flat[j] - flat[i],
      flat[j + 1] - flat[i + 1],
      flat[k] - flat[i],
      flat[k + 1] - flat[i + 1],
    ];
    const [p1, q1, p2, q2] = [
      direction[j] - direction[i],
      direction[j + 1] - direction[i + 1],
      direction[k] - direction[i],
      direction[k + 1] - direction[i + 1],
    ];
    const root = firstPositiveRoot(p1 * q2 - p2 * q1, x1 * q2 + p1 * y2 - x2 * q1 - p2 * y1, x1 * y2 - x2 * y1);
    if (root < first) first = root;
  }
  return first;
}

/** Smallest positive x with a x² + b x + c = 0, or Infinity; without loss of digits (Press et al., Numerical Recipes, 5.6). */
function firstPositiveRoot(a: number, b: number, c: number): number {
  const disc = b * b - 4 * a * c;
  if (disc < 0) return Infinity;
  const q = -0.5 * (b + (b < 0 ? -1 : 1) * Math.sqrt(disc));
  const [r1, r2] = [q / a, c / q];
  let root = Infinity;
  if (r1 > 0) root = r1;
  if (r2 > 0 && r2 < root) root = r2;
  return root;
}
