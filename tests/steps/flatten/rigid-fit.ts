/**
 * Greatest distance between like points of two flat shapes once the second is moved and turned onto the first, mm: the move and turn of
 * least squares in closed form, never a mirror image and never another size.
 * @param p  x y per point.
 * @param q  the same points in the same order.
 */
export function worstAfterFit(p: Float64Array, q: Float64Array): number {
  if (p.length !== q.length) throw new Error(`${p.length} numbers beside ${q.length}`);
  const [px, py] = middleOf(p);
  const [qx, qy] = middleOf(q);
  let along = 0;
  let across = 0;
  for (let i = 0; i < p.length; i += 2) {
    const [ax, ay, bx, by] = [p[i] - px, p[i + 1] - py, q[i] - qx, q[i + 1] - qy];
    along += bx * ax + by * ay;
    across += bx * ay - by * ax;
  }
  const size = Math.hypot(along, across);
  const [cos, sin] = size > 0 ? [along / size, across / size] : [1, 0];
  let worst = 0;
  for (let i = 0; i < p.length; i += 2) {
    const [bx, by] = [q[i] - qx, q[i + 1] - qy];
    worst = Math.max(worst, Math.hypot(p[i] - px - (cos * bx - sin * by), p[i + 1] - py - (sin * bx + cos * by)));
  }
  return worst;
}

/** The mirror image: x to -x. */
export const mirrorFlat = (points: Float64Array): Float64Array => points.map((x, i) => (i % 2 === 0 ? -x : x));

function middleOf(points: Float64Array): [number, number] {
  let [x, y] = [0, 0];
  for (let i = 0; i < points.length; i += 2) [x, y] = [x + points[i], y + points[i + 1]];
  return [(2 * x) / points.length, (2 * y) / points.length];
}
