import type { RestShapes } from './rest-shapes.ts';

/**
 * The symmetric Dirichlet energy of a flat piece (Smith and Schaefer, "Bijective parameterization with free boundaries", 2015): for each
 * triangle s1² + s2² + 1/s1² + 1/s2² with the singular values of the map from the surface to the plane, weighted by area. 4 is true
 * size; it grows without bound as a triangle collapses.
 * @param weights  share of each triangle; by area, so that they sum to 1, unless said.
 * @returns the mean over the area; Infinity where a triangle has no positive area.
 */
export function energyOf(rest: RestShapes, flat: Float64Array, weights = rest.weight): number {
  const { corners, base, foot, height } = rest;
  let sum = 0;
  for (let t = 0; t < rest.count; t += 1) {
    const a = 2 * corners[3 * t];
    const b = 2 * corners[3 * t + 1];
    const c = 2 * corners[3 * t + 2];
    const ux = (flat[b] - flat[a]) / base[t];
    const uy = (flat[b + 1] - flat[a + 1]) / base[t];
    const vx = (flat[c] - flat[a] - foot[t] * ux) / height[t];
    const vy = (flat[c + 1] - flat[a + 1] - foot[t] * uy) / height[t];
    const det = ux * vy - uy * vx;
    if (!(det > 0)) return Infinity;
    sum += weights[t] * (ux * ux + uy * uy + vx * vx + vy * vy) * (1 + 1 / (det * det));
  }
  return sum;
}
