import type { FlatSystem } from './flat-system.ts';
import type { RestShapes } from './rest-shapes.ts';

/**
 * Adds the springs of "as rigid as possible" flattening (Liu et al., "A local/global approach to mesh parameterization", 2008): the
 * Laplacian in which each triangle pulls by the cotangents of its true angles.
 * @param values  one number per entry of the system's plan, lower half.
 */
export function addRigidSprings({ rest, slots }: FlatSystem, values: Float64Array): void {
  const { base, foot, height, weight } = rest;
  for (let t = 0; t < rest.count; t += 1) {
    const g1x = 1 / base[t];
    const g1y = -foot[t] / (base[t] * height[t]);
    const g2y = 1 / height[t];
    const k11 = weight[t] * (g1x * g1x + g1y * g1y);
    const k12 = weight[t] * g1y * g2y;
    const k22 = weight[t] * g2y * g2y;
    values[slots[6 * t]] += k11 + 2 * k12 + k22;
    values[slots[6 * t + 1]] += k11;
    values[slots[6 * t + 2]] += k22;
    values[slots[6 * t + 3] >> 1] -= k11 + k12;
    values[slots[6 * t + 4] >> 1] -= k12 + k22;
    values[slots[6 * t + 5] >> 1] += k12;
  }
}

/**
 * Adds the right-hand side that goes with those springs: every true triangle, turned as it fits its flat shape best.
 * @param flat  x y per vertex; a triangle without any size there pulls nothing.
 * @param next  x y per vertex, added to.
 */
export function addTurnedTriangles(rest: RestShapes, flat: Float64Array, next: Float64Array): void {
  const { corners, base, foot, height, weight, count } = rest;
  for (let t = 0; t < count; t += 1) {
    const a = 2 * corners[3 * t];
    const b = 2 * corners[3 * t + 1];
    const c = 2 * corners[3 * t + 2];
    const ux = (flat[b] - flat[a]) / base[t];
    const uy = (flat[b + 1] - flat[a + 1]) / base[t];
    const vx = (flat[c] - flat[a] - foot[t] * ux) / height[t];
    const vy = (flat[c + 1] - flat[a + 1] - foot[t] * uy) / height[t];
    let zx = ux + vy;
    let zy = uy - vx;
    const length = Math.sqrt(zx * zx + zy * zy);
    if (!(length > 0)) continue;
    zx *= weight[t] / length;
    zy *= weight[t] / length;
    const g1x = 1 / base[t];
    const g1y = -foot[t] / (base[t] * height[t]);
    const g2y = 1 / height[t];
    const f1x = zx * g1x - zy * g1y;
    const f1y = zx * g1y + zy * g1x;
    const f2x = -zy * g2y;
    const f2y = zx * g2y;
    next[a] -= f1x + f2x;
    next[a + 1] -= f1y + f2y;
    next[b] += f1x;
    next[b + 1] += f1y;
    next[c] += f2x;
    next[c + 1] += f2y;
  }
}
