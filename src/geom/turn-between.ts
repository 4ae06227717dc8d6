/**
 * The turn about the origin that takes one set of points to another, radians, counter-clockwise, above -pi to pi: the best by least
 * squares, exact where the one is the other turned. 0 for no points.
 * @param from, to  packed x y, the same points in the same order.
 */
export function turnBetween(from: ArrayLike<number>, to: ArrayLike<number>): number {
  let dot = 0;
  let cross = 0;
  for (let i = 0; i + 1 < from.length; i += 2) {
    dot += from[i] * to[i] + from[i + 1] * to[i + 1];
    cross += from[i] * to[i + 1] - from[i + 1] * to[i];
  }
  return Math.atan2(cross, dot);
}
