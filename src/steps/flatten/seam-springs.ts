import type { Patch } from '../../model/patch.ts';
import type { HessianPattern } from './symmetric-dirichlet.ts';

/**
 * Edges that are asked to keep their true length before the inside does, so that the two sides of a seam meet: each costs
 * `weight (l / L - 1)²`, with l its flat and L its true length.
 */
export interface SeamSprings {
  /** Two local vertices each, lower first. */
  readonly ends: Uint32Array;
  /** L, mm. */
  readonly lengths: Float64Array;
  /** Share of the seam times the price asked for; beside an energy whose weights sum to 1. */
  readonly weights: Float64Array;
  /** First entry in the Hessian's list of each edge. */
  readonly slots: Int32Array;
}

/**
 * Springs along the border of a patch.
 * @param isHeld  says of each border edge (two local vertices, in the direction of the loop) whether it is held.
 * @param price   what a seam that is 100 % wrong all along costs, in units of the energy (4 = isometry); 0 turns springs off.
 * @param edgeBetween number of the edge between two local vertices.
 * @param points  x y z per local vertex, mm.
 */
export function seamSprings(
  patch: Patch,
  isHeld: (from: number, to: number) => boolean,
  price: number,
  points: Float64Array,
  pattern: HessianPattern,
  edgeBetween: (v: number, w: number) => number,
): SeamSprings {
  const ends: number[] = [];
  const lengths: number[] = [];
  for (const loop of price > 0 ? patch.loops : []) {
    for (let i = 0; i < loop.length; i += 1) {
      const [v, w] = [loop[i], loop[(i + 1) % loop.length]];
      const length = Math.hypot(
        points[3 * w] - points[3 * v],
        points[3 * w + 1] - points[3 * v + 1],
        points[3 * w + 2] - points[3 * v + 2],
      );
      if (!(length > 0) || !isHeld(v, w)) continue;
      ends.push(Math.min(v, w), Math.max(v, w));
      lengths.push(length);
    }
  }
  const total = lengths.reduce((sum, length) => sum + length, 0);
  return {
    ends: Uint32Array.from(ends),
    lengths: Float64Array.from(lengths),
    weights: Float64Array.from(lengths, (length) => (price * length) / total),
    slots: Int32Array.from(lengths, (_, i) => 3 * pattern.vertexCount + 4 * edgeBetween(ends[2 * i], ends[2 * i + 1])),
  };
}

export function springEnergy({ ends, lengths, weights }: SeamSprings, flat: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < lengths.length; i += 1) {
    const [v, w] = [2 * ends[2 * i], 2 * ends[2 * i + 1]];
    const excess = Math.hypot(flat[w] - flat[v], flat[w + 1] - flat[v + 1]) / lengths[i] - 1;
    sum += weights[i] * excess * excess;
  }
  return sum;
}

/** Adds the springs' gradient and Hessian; the part across a compressed spring, which would be negative, is left out. */
export function addSpringDerivatives(
  { ends, lengths, weights, slots }: SeamSprings,
  flat: Float64Array,
  gradient: Float64Array,
  hessian: Float64Array,
): void {
  for (let i = 0; i < lengths.length; i += 1) {
    const [v, w] = [2 * ends[2 * i], 2 * ends[2 * i + 1]];
    const [dx, dy] = [flat[w] - flat[v], flat[w + 1] - flat[v + 1]];
    const length = Math.hypot(dx, dy);
    const [x, y] = [dx / length, dy / length];
    const stiff = (2 * weights[i]) / (lengths[i] * lengths[i]);
    const pull = stiff * (length - lengths[i]);
    gradient[v] -= pull * x;
    gradient[v + 1] -= pull * y;
    gradient[w] += pull * x;
    gradient[w + 1] += pull * y;
    const across = Math.max(0, pull / length);
    const xx = stiff * x * x + across * y * y;
    const xy = (stiff - across) * x * y;
    const yy = stiff * y * y + across * x * x;
    for (const diagonal of [3 * ends[2 * i], 3 * ends[2 * i + 1]]) {
      hessian[diagonal] += xx;
      hessian[diagonal + 1] += xy;
      hessian[diagonal + 2] += yy;
    }
    const slot = slots[i];
    hessian[slot] -= xx;
    hessian[slot + 1] -= xy;
    hessian[slot + 2] -= xy;
    hessian[slot + 3] -= yy;
  }
}
