/** The line with fewer points: each is at least this far from the one kept before it, mm; the first and the last stay. */
export function thinLine(points: ArrayLike<number>, leastMm: number): Float64Array {
  const kept: number[] = [];
  const last = points.length - 2;
  for (let i = 0; i <= last; i += 2) {
    const far = Math.hypot(points[i] - (kept.at(-2) ?? Infinity), points[i + 1] - (kept.at(-1) ?? Infinity));
    if (far >= leastMm || i === last) kept.push(points[i], points[i + 1]);
  }
  return Float64Array.from(kept);
}
