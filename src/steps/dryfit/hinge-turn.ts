/**
 * The turn between two triangles at their common edge and how it changes with their four corners (Bridson, Marino and Fedkiw, "Simulation
 * of clothing with folds and wrinkles", 2003, section 4; the edge of Grinspun, Hirani, Desbrun and Schröder, "Discrete shells", 2003).
 *
 *         c          triangles (a, b, c) and (b, a, d); the turn is > 0 where the edge stands out on the side
 *        / \         that sees them counter-clockwise
 *       a---b
 *        \ /
 *         d
 * @param x        x y z per vertex.
 * @param gradient 12 numbers, overwritten: d turn / d a, b, c, d, radians per mm.
 * @returns radians, -pi to pi.
 */
export function hingeTurn(x: Float64Array, a: number, b: number, c: number, d: number, gradient: Float64Array): number {
  const [ax, ay, az] = [x[3 * a], x[3 * a + 1], x[3 * a + 2]];
  const [ex, ey, ez] = [x[3 * b] - ax, x[3 * b + 1] - ay, x[3 * b + 2] - az];
  const [cx, cy, cz] = [x[3 * c] - ax, x[3 * c + 1] - ay, x[3 * c + 2] - az];
  const [dx, dy, dz] = [x[3 * d] - ax, x[3 * d + 1] - ay, x[3 * d + 2] - az];
  const [mx, my, mz] = [ey * cz - ez * cy, ez * cx - ex * cz, ex * cy - ey * cx];
  const [nx, ny, nz] = [dy * ez - dz * ey, dz * ex - dx * ez, dx * ey - dy * ex];
  const squared = ex * ex + ey * ey + ez * ez;
  const length = Math.sqrt(squared);
  const m2 = mx * mx + my * my + mz * mz;
  const n2 = nx * nx + ny * ny + nz * nz;
  const atC = (cx * ex + cy * ey + cz * ez) / squared;
  const atD = (dx * ex + dy * ey + dz * ez) / squared;
  const [m, n] = [length / m2, length / n2];
  for (let k = 0; k < 3; k += 1) {
    const u = m * (k === 0 ? mx : k === 1 ? my : mz);
    const v = n * (k === 0 ? nx : k === 1 ? ny : nz);
    gradient[k] = (1 - atC) * u + (1 - atD) * v;
    gradient[3 + k] = atC * u + atD * v;
    gradient[6 + k] = -u;
    gradient[9 + k] = -v;
  }
  const sine = ((my * nz - mz * ny) * ex + (mz * nx - mx * nz) * ey + (mx * ny - my * nx) * ez) / length;
  return Math.atan2(sine, mx * nx + my * ny + mz * nz);
}

/**
 * The same for a border edge whose normal stays as it is in space: how the turn from the triangle's normal to it changes with the corners.
 * @param gradient 9 numbers, overwritten: d turn / d a, b, c, radians per mm.
 */
export function borderTurnSlope(x: Float64Array, a: number, b: number, c: number, gradient: Float64Array): void {
  const [ax, ay, az] = [x[3 * a], x[3 * a + 1], x[3 * a + 2]];
  const [ex, ey, ez] = [x[3 * b] - ax, x[3 * b + 1] - ay, x[3 * b + 2] - az];
  const [cx, cy, cz] = [x[3 * c] - ax, x[3 * c + 1] - ay, x[3 * c + 2] - az];
  const [mx, my, mz] = [ey * cz - ez * cy, ez * cx - ex * cz, ex * cy - ey * cx];
  const squared = ex * ex + ey * ey + ez * ez;
  const m = Math.sqrt(squared) / (mx * mx + my * my + mz * mz);
  const atC = (cx * ex + cy * ey + cz * ez) / squared;
  for (let k = 0; k < 3; k += 1) {
    const u = m * (k === 0 ? mx : k === 1 ? my : mz);
    gradient[k] = (1 - atC) * u;
    gradient[3 + k] = atC * u;
    gradient[6 + k] = -u;
  }
}
