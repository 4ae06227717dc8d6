import { orient2d } from '../../geom/predicates.ts';

/** How many packed triangles do not run counter-clockwise in the plane, exactly; one without area counts. */
export function countFlips(triangles: Uint32Array, flat: Float64Array): number {
  let count = 0;
  for (let t = 0; t < triangles.length; t += 3) if (isFlipped(triangles, flat, t)) count += 1;
  return count;
}

/** True where one of the triangles does not run counter-clockwise in the plane, exactly. */
export function hasFlip(triangles: Uint32Array, flat: Float64Array): boolean {
  for (let t = 0; t < triangles.length; t += 3) if (isFlipped(triangles, flat, t)) return true;
  return false;
}

function isFlipped(triangles: Uint32Array, flat: Float64Array, t: number): boolean {
  const a = 2 * triangles[t];
  const b = 2 * triangles[t + 1];
  const c = 2 * triangles[t + 2];
  return !(orient2d(flat[a], flat[a + 1], flat[b], flat[b + 1], flat[c], flat[c + 1]) > 0);
}

/**
 * The longest step along `direction` before the first triangle loses its area: the least positive root of a quadratic for each triangle
 * (Smith and Schaefer, "Bijective parameterization with free boundaries", 2015, section 3.2).
 * @returns a factor > 0, Infinity where no triangle ever collapses.
 */
export function stepToFirstFlip(triangles: Uint32Array, flat: Float64Array, direction: Float64Array): number {
  let least = Infinity;
  for (let t = 0; t < triangles.length; t += 3) {
    const a = 2 * triangles[t];
    const b = 2 * triangles[t + 1];
    const c = 2 * triangles[t + 2];
    const px = flat[b] - flat[a];
    const py = flat[b + 1] - flat[a + 1];
    const qx = flat[c] - flat[a];
    const qy = flat[c + 1] - flat[a + 1];
    const dpx = direction[b] - direction[a];
    const dpy = direction[b + 1] - direction[a + 1];
    const dqx = direction[c] - direction[a];
    const dqy = direction[c + 1] - direction[a + 1];
    const constant = px * qy - py * qx;
    const linear = px * dqy - py * dqx + dpx * qy - dpy * qx;
    const square = dpx * dqy - dpy * dqx;
    // Twice the area at step s is constant + linear s + square s²; most triangles are nowhere near 0 within the step of interest.
    if (linear >= 0 && square >= 0) continue;
    const discriminant = linear * linear - 4 * square * constant;
    if (discriminant < 0) continue;
    // The smaller positive root, without subtracting like numbers.
    const root = Math.sqrt(discriminant);
    const step = linear < 0 ? (2 * constant) / (root - linear) : (-linear - root) / (2 * square);
    if (step > 0 && step < least) least = step;
  }
  return least;
}
