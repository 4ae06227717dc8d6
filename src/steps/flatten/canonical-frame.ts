/**
 * Moves the middle of the area to the origin and turns the longest spread of the area along x, so that the same shape lies the same way
 * whatever its numbering. Of the two ways round, the one with the heavier half to the right is taken (third moment).
 * A shape without a longest spread (a disc, a square) keeps the turn it came with.
 */
export function canonicalFrame(triangles: Uint32Array, flat: Float64Array): Float64Array {
  const middle = momentsOf(triangles, flat, 0, 0, 1, 0);
  const about = momentsOf(triangles, flat, middle.x, middle.y, 1, 0);
  const isRound = Math.hypot((about.xx - about.yy) / 2, about.xy) < 1e-6 * (about.xx + about.yy);
  const angle = isRound ? 0 : 0.5 * Math.atan2(2 * about.xy, about.xx - about.yy);
  let cos = Math.cos(angle);
  let sin = Math.sin(angle);
  if (!isRound && momentsOf(triangles, flat, middle.x, middle.y, cos, sin).xxx < 0) {
    cos = -cos;
    sin = -sin;
  }
  const result = new Float64Array(flat.length);
  for (let i = 0; i < flat.length; i += 2) {
    const x = flat[i] - middle.x;
    const y = flat[i + 1] - middle.y;
    result[i] = x * cos + y * sin;
    result[i + 1] = y * cos - x * sin;
  }
  return result;
}

/** Means over the area of x, y, x², x y, y² and x³. */
interface Moments {
  readonly x: number;
  readonly y: number;
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
  readonly xxx: number;
}

/**
 * Moments of a flat shape about a point, in axes turned by (cos, sin): exact for each triangle, so they do not depend on how the shape is
 * triangulated.
 */
function momentsOf(
  triangles: Uint32Array,
  flat: Float64Array,
  atX: number,
  atY: number,
  cos: number,
  sin: number,
): Moments {
  let total = 0;
  let x = 0;
  let y = 0;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  let xxx = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const i = 2 * triangles[t];
    const j = 2 * triangles[t + 1];
    const k = 2 * triangles[t + 2];
    const ax = (flat[i] - atX) * cos + (flat[i + 1] - atY) * sin;
    const ay = (flat[i + 1] - atY) * cos - (flat[i] - atX) * sin;
    const bx = (flat[j] - atX) * cos + (flat[j + 1] - atY) * sin;
    const by = (flat[j + 1] - atY) * cos - (flat[j] - atX) * sin;
    const cx = (flat[k] - atX) * cos + (flat[k + 1] - atY) * sin;
    const cy = (flat[k + 1] - atY) * cos - (flat[k] - atX) * sin;
    const area = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
    const sumX = ax + bx + cx;
    const sumY = ay + by + cy;
    const squares = ax * ax + bx * bx + cx * cx;
    total += area;
    x += (area * sumX) / 3;
    y += (area * sumY) / 3;
    xx += (area * (squares + sumX * sumX)) / 12;
    xy += (area * (ax * ay + bx * by + cx * cy + sumX * sumY)) / 12;
    yy += (area * (ay * ay + by * by + cy * cy + sumY * sumY)) / 12;
    xxx += (area * (sumX * squares + ax * bx * cx)) / 10;
  }
  return { x: x / total, y: y / total, xx: xx / total, xy: xy / total, yy: yy / total, xxx: xxx / total };
}
