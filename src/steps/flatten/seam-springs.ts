import type { FlatTerm } from './flat-term.ts';
import { entryBetween, type FactorPlan } from '../../geom/sparse-plan.ts';

/**
 * Edges that are asked to keep their true length before the inside does, so that the two sides of a seam meet: each costs
 * `weight (l / L - 1)²`, with l its flat and L its true length.
 */
interface SeamSprings {
  /** Two local vertices each, lower first. */
  readonly ends: Uint32Array;
  /** L, mm. */
  readonly lengths: Float64Array;
  /** Share of the seam times the price asked for; beside an energy whose weights sum to 1. */
  readonly weights: Float64Array;
  /** Entries of the matrix for each edge: of its first end, its second end, and between them. */
  readonly slots: Int32Array;
}

/**
 * Share of the mean held edge below which an edge counts as if it were so long: what is next to nothing would be a spring so stiff that
 * nothing else could move.
 */
const LEAST_SPRING_SHARE = 1e-3;

/** Shares of the full price that come before it where seams are far from their length: stiff springs turn in small steps only. */
export const PRICE_STAGES: readonly number[] = [1 / 30, 1 / 5];

/**
 * Springs along the border of a patch.
 * @param edges   pairs of local vertices joined by a side; one without length is left out.
 * @param price   what a seam that is 100 % wrong all along costs, in units of the energy (4 = isometry); 0 turns springs off.
 * @param points  x y z per local vertex, mm.
 * @param own     length of each edge, mm, where it is not that between its points.
 * @returns null where nothing is held.
 */
export function seamSprings(
  edges: Uint32Array,
  price: number,
  points: Float64Array,
  plan: FactorPlan,
  own?: Float64Array,
): FlatTerm | null {
  const ends: number[] = [];
  const lengths: number[] = [];
  for (let i = 0; price > 0 && i < edges.length; i += 2) {
    const [v, w] = [edges[i], edges[i + 1]];
    const length =
      own?.[i / 2] ??
      Math.hypot(
        points[3 * w] - points[3 * v],
        points[3 * w + 1] - points[3 * v + 1],
        points[3 * w + 2] - points[3 * v + 2],
      );
    if (!(length > 0)) continue;
    ends.push(Math.min(v, w), Math.max(v, w));
    lengths.push(length);
  }
  if (lengths.length === 0) return null;
  const total = lengths.reduce((sum, length) => sum + length, 0);
  const least = (LEAST_SPRING_SHARE * total) / lengths.length;
  const springs: SeamSprings = {
    ends: Uint32Array.from(ends),
    lengths: Float64Array.from(lengths),
    weights: Float64Array.from(lengths, (length) => ((price * length) / total) * Math.min(1, (length / least) ** 2)),
    slots: Int32Array.from(
      lengths.flatMap((_, i) => {
        const [v, w] = [ends[2 * i], ends[2 * i + 1]];
        return [entryBetween(plan, v, v), entryBetween(plan, w, w), entryBetween(plan, v, w)];
      }),
    ),
  };
  return {
    costOf: (flat) => springCost(springs, flat),
    addDerivatives: (flat, gradient, values, exact) => {
      addSpringDerivatives(springs, flat, gradient, values, exact);
    },
  };
}

function springCost({ ends, lengths, weights }: SeamSprings, flat: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < lengths.length; i += 1) {
    const [v, w] = [2 * ends[2 * i], 2 * ends[2 * i + 1]];
    const excess = Math.hypot(flat[w] - flat[v], flat[w + 1] - flat[v + 1]) / lengths[i] - 1;
    sum += weights[i] * excess * excess;
  }
  return sum;
}

/** The curvature across a compressed spring is negative, and left out where the sum must stay positive. */
function addSpringDerivatives(
  { ends, lengths, weights, slots }: SeamSprings,
  flat: Float64Array,
  gradient: Float64Array,
  values: Float64Array,
  exact: boolean,
): void {
  const acrossFloor = exact ? -Infinity : 0;
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
    const across = Math.max(acrossFloor, pull / length);
    const xx = stiff * x * x + across * y * y;
    const xy = (stiff - across) * x * y;
    const yy = stiff * y * y + across * x * x;
    for (let k = 0; k < 3; k += 1) {
      const at = 4 * slots[3 * i + k];
      const sign = k < 2 ? 1 : -1;
      values[at] += sign * xx;
      values[at + 1] += sign * xy;
      values[at + 2] += sign * xy;
      values[at + 3] += sign * yy;
    }
  }
}
