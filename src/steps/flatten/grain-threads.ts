import type { FlatSystem } from './flat-system.ts';
import type { FlatTerm } from './flat-term.ts';
import type { GrainOnSurface } from './flatten-options.ts';

/** Price of a thread's change of length, beside 4 for the same strain in plain foam: ten times as dear. */
const THREAD_PRICE = 40;

/**
 * Threads of the grain, one through each triangle, that are asked to keep their length, so that the stretch lies across them (or, where
 * it is to lie along the grain, threads across it). Each costs `weight (l - 1)²`, with l the flat length of one mm of thread.
 *
 * The thread's direction is the grain's axis laid onto the triangle and turned; a triangle that looks along the axis has no thread.
 * @param points  the triangles' corners are those of `system.rest`.
 * @returns null where the grain asks for nothing.
 */
export function grainThreads(system: FlatSystem, { axis, turnRad, stretch }: GrainOnSurface): FlatTerm | null {
  if (stretch === 'any') return null;
  const { rest, slots } = system;
  const { corners, points, base, foot, height, weight, empty, count } = rest;
  const angle = stretch === 'across' ? turnRad : turnRad + Math.PI / 2;
  /** Shares of corners 1 and 2 in one mm of thread; corner 0 has minus their sum. */
  const shares = new Float64Array(2 * count);
  const prices = new Float64Array(count);
  for (let t = 0; t < count; t += 1) {
    if (empty[t] === 1) continue;
    const thread = threadIn(points, corners, t, axis);
    if (thread === null) continue;
    const x = Math.cos(angle) * thread.x - Math.sin(angle) * thread.y;
    const y = Math.sin(angle) * thread.x + Math.cos(angle) * thread.y;
    shares[2 * t] = (x - (foot[t] * y) / height[t]) / base[t];
    shares[2 * t + 1] = y / height[t];
    // What looks along the axis hardly has a direction: its thread counts little.
    prices[t] = THREAD_PRICE * weight[t] * thread.certainty;
  }
  return {
    costOf(flat) {
      let sum = 0;
      for (let t = 0; t < count; t += 1) {
        const { length } = imageOf(flat, corners, shares, t);
        sum += prices[t] * (length - 1) * (length - 1);
      }
      return sum;
    },
    addDerivatives(flat, gradient, values, exact) {
      for (let t = 0; t < count; t += 1) {
        if (prices[t] === 0) continue;
        const { x, y, length } = imageOf(flat, corners, shares, t);
        const [c1, c2] = [shares[2 * t], shares[2 * t + 1]];
        const each = [-c1 - c2, c1, c2];
        const [dx, dy] = [x / length, y / length];
        const stiff = 2 * prices[t];
        const pull = stiff * (length - 1);
        const across = exact ? pull / length : Math.max(0, pull / length);
        const xx = stiff * dx * dx + across * dy * dy;
        const xy = (stiff - across) * dx * dy;
        const yy = stiff * dy * dy + across * dx * dx;
        for (let k = 0; k < 3; k += 1) {
          const v = 2 * corners[3 * t + k];
          gradient[v] += pull * each[k] * dx;
          gradient[v + 1] += pull * each[k] * dy;
          addBlock(values, 4 * slots[6 * t + k], each[k] * each[k], xx, xy, yy);
        }
        // The blocks are symmetric, so it does not matter which end is the row.
        addBlock(values, 4 * (slots[6 * t + 3] >> 1), each[1] * each[0], xx, xy, yy);
        addBlock(values, 4 * (slots[6 * t + 4] >> 1), each[2] * each[0], xx, xy, yy);
        addBlock(values, 4 * (slots[6 * t + 5] >> 1), each[2] * each[1], xx, xy, yy);
      }
    },
  };
}

function addBlock(values: Float64Array, at: number, share: number, xx: number, xy: number, yy: number): void {
  values[at] += share * xx;
  values[at + 1] += share * xy;
  values[at + 2] += share * xy;
  values[at + 3] += share * yy;
}

/** Where one mm of the thread goes in the plane, and how long it is there. */
function imageOf(flat: Float64Array, corners: Uint32Array, shares: Float64Array, t: number) {
  const a = 2 * corners[3 * t];
  const b = 2 * corners[3 * t + 1];
  const c = 2 * corners[3 * t + 2];
  const [c1, c2] = [shares[2 * t], shares[2 * t + 1]];
  const x = c1 * (flat[b] - flat[a]) + c2 * (flat[c] - flat[a]);
  const y = c1 * (flat[b + 1] - flat[a + 1]) + c2 * (flat[c + 1] - flat[a + 1]);
  return { x, y, length: Math.sqrt(x * x + y * y) };
}

/**
 * The axis laid onto a triangle, as a unit vector in the triangle's own plane (x along its base, seen from outside).
 * @returns `certainty` is the share of the axis that lies in the plane, 0 to 1; null where it stands straight on it.
 */
function threadIn(
  points: Float64Array,
  corners: Uint32Array,
  t: number,
  axis: GrainOnSurface['axis'],
): { readonly x: number; readonly y: number; readonly certainty: number } | null {
  const a = 3 * corners[3 * t];
  const b = 3 * corners[3 * t + 1];
  const c = 3 * corners[3 * t + 2];
  const px = points[b] - points[a];
  const py = points[b + 1] - points[a + 1];
  const pz = points[b + 2] - points[a + 2];
  const qx = points[c] - points[a];
  const qy = points[c + 1] - points[a + 1];
  const qz = points[c + 2] - points[a + 2];
  const side = Math.hypot(px, py, pz);
  const along = (px * qx + py * qy + pz * qz) / (side * side);
  const [hx, hy, hz] = [qx - along * px, qy - along * py, qz - along * pz];
  const high = Math.hypot(hx, hy, hz);
  const x = (axis.x * px + axis.y * py + axis.z * pz) / side;
  const y = (axis.x * hx + axis.y * hy + axis.z * hz) / high;
  const certainty = Math.hypot(x, y);
  return certainty > 1e-6 ? { x: x / certainty, y: y / certainty, certainty } : null;
}
