/**
 * Moves the middle of the area to the origin and turns the longest spread of the area along x, so that the same shape lies the same way
 * whatever its numbering. Of the two ways round, the one with the heavier half to the right is taken (third moment).
 * A shape without a longest spread (a disc, a square) keeps the turn it came with.
 */
export function canonicalFrame(triangles: Uint32Array, flat: Float64Array): Float64Array {
  let [area, cx, cy] = [0, 0, 0];
  eachTriangle(triangles, flat, (a, x, y) => {
    area += a;
    cx += a * x;
    cy += a * y;
  });
  cx /= area;
  cy /= area;
  const { xx, xy, yy } = secondMoments(triangles, flat, cx, cy);
  const isRound = Math.hypot((xx - yy) / 2, xy) < 1e-6 * (xx + yy);
  const angle = isRound ? 0 : 0.5 * Math.atan2(2 * xy, xx - yy);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  let skew = 0;
  eachTriangle(triangles, flat, (a, x, y) => {
    skew += a * ((x - cx) * cos + (y - cy) * sin) ** 3;
  });
  const way = !isRound && skew < 0 ? -1 : 1;
  const result = new Float64Array(flat.length);
  for (let i = 0; i < flat.length; i += 2) {
    result[i] = way * ((flat[i] - cx) * cos + (flat[i + 1] - cy) * sin);
    result[i + 1] = way * ((flat[i + 1] - cy) * cos - (flat[i] - cx) * sin);
  }
  return result;
}

/** Integrals of x², xy and y² about a point, times 24: exact for each triangle, so they do not depend on how the shape is triangulated. */
function secondMoments(
  triangles: Uint32Array,
  flat: Float64Array,
  cx: number,
  cy: number,
): { xx: number; xy: number; yy: number } {
  let [xx, xy, yy] = [0, 0, 0];
  let t = 0;
  eachTriangle(triangles, flat, (area, mx, my) => {
    const [sx, sy] = [3 * (mx - cx), 3 * (my - cy)];
    xx += area * sx * sx;
    xy += area * sx * sy;
    yy += area * sy * sy;
    for (let k = 0; k < 3; k += 1) {
      const v = 2 * triangles[t + k];
      const [x, y] = [flat[v] - cx, flat[v + 1] - cy];
      xx += area * x * x;
      xy += area * x * y;
      yy += area * y * y;
    }
    t += 3;
  });
  return { xx, xy, yy };
}

/** Calls `visit` with twice the area and the middle of each triangle. */
function eachTriangle(
  triangles: Uint32Array,
  flat: Float64Array,
  visit: (area: number, x: number, y: number) => void,
): void {
  for (let t = 0; t < triangles.length; t += 3) {
    const [i, j, k] = [2 * triangles[t], 2 * triangles[t + 1], 2 * triangles[t + 2]];
    const area = (flat[j] - flat[i]) * (flat[k + 1] - flat[i + 1]) - (flat[k] - flat[i]) * (flat[j + 1] - flat[i + 1]);
    visit(area, (flat[i] + flat[j] + flat[k]) / 3, (flat[i + 1] + flat[j + 1] + flat[k + 1]) / 3);
  }
}
