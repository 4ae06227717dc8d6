import type { FactorPlan } from '../../geom/sparse-plan.ts';
import type { Patch } from '../../model/patch.ts';
import { borderPairs } from './border-pairs.ts';
import type { FlatSystem } from './flat-system.ts';
import type { FlatTerm } from './flat-term.ts';
import { stepToFirstFlip } from './flips.ts';
import { NearBorders, type Near } from './near-borders.ts';

/** Cost of a border that lies everywhere at half its reach, in units of the energy (4 = isometry). */
const PRICE = 1;

/** Steps are looked at this far: a whole one, and some more for those who stop short of the end. */
const FARTHEST_STEP = 1.25;

/**
 * A barrier that keeps the borders of a piece from running into each other (Smith and Schaefer, "Bijective parameterization with free
 * boundaries", 2015, section 3.3): each border point nearer to a border edge than the pair's reach r costs (r / d - 1)² with d their
 * distance, times its share of the border. Where nothing is near it costs nothing, and little time.
 *
 * It holds a shape so that is clear of itself; it does not clear one that overlaps, whose cost is Infinity.
 */
export function keepApart(patch: Patch, system: FlatSystem): FlatTerm {
  return apartTerm(new NearBorders(borderPairs(patch, system.rest)), system);
}

/** Barrier up to which borders are clear enough of each other to begin from: all lie at half their reach. */
const MOST_BEGIN_COST = PRICE;

/**
 * True where the borders of a shape are clear of each other and not all but touching, so that it may be the start of a search with the
 * barrier. Sides of a dart that lie on each other are not: nothing overlaps there, but neither side can tell on which side it is.
 */
export function isClearOfItself(patch: Patch, system: FlatSystem, flat: Float64Array): boolean {
  return keepApart(patch, system).costOf(flat) <= MOST_BEGIN_COST;
}

/** {@link keepApart} for a border that is known already. */
export function apartTerm(borders: NearBorders, { rest, plan }: FlatSystem): FlatTerm {
  const { vertices, tails, heads, gap, shares, lengths } = borders.border;
  /** Finely divided edges share what one long edge would cost. */
  const weightOf = ({ point, edge, reach }: Near): number => PRICE * shares[point] * Math.min(1, lengths[edge] / reach);
  return {
    costOf: (flat) => {
      if (borders.hasCrossing(flat)) return Infinity;
      let sum = 0;
      borders.forEachWithin(flat, gap, (near) => {
        if (near.distance < near.reach) sum += weightOf(near) * (near.reach / near.distance - 1) ** 2;
      });
      return sum;
    },
    addDerivatives: (flat, gradient, values) => {
      borders.forEachWithin(flat, gap, (near) => {
        if (near.distance >= near.reach) return;
        const places = [vertices[near.point], tails[near.edge], heads[near.edge]];
        addPair(near, weightOf(near), places, gradient, plan, values);
      });
    },
    stepLimit: (flat, step) => {
      const farthest = Math.min(FARTHEST_STEP, stepToFirstFlip(rest.corners, flat, step));
      return borders.stepToFirstHit(flat, step, farthest);
    },
  };
}

/**
 * Adds the derivatives of weight (r / d - 1)². Of the second one the part along the line between point and edge: what turning that line
 * does has negative curvature for the most part, and little beside it.
 *
 * Where the plan has no room for what joins the three places, blocks on the diagonal that are at least as stiff: by Cauchy and Schwarz
 * each place bears its share |c| of all, times their sum.
 * @param places  vertices of the point, the edge's tail and its head.
 */
function addPair(
  { reach, distance, share, nx, ny }: Near,
  weight: number,
  places: readonly number[],
  gradient: Float64Array,
  plan: FactorPlan,
  values: Float64Array,
): void {
  const near = reach / distance;
  const slope = (-2 * weight * (near - 1) * near) / distance;
  const bend = (2 * weight * near * (3 * near - 2)) / (distance * distance);
  const shares = [1, share - 1, -share];
  const between = [entryOf(plan, places[0], places[1]), entryOf(plan, places[0], places[2])];
  const isJoined = between[0] >= 0 && between[1] >= 0;
  // |1| + |share - 1| + |share|
  const all = 2;
  for (let i = 0; i < 3; i += 1) {
    gradient[2 * places[i]] += slope * shares[i] * nx;
    gradient[2 * places[i] + 1] += slope * shares[i] * ny;
    const stiff = isJoined ? shares[i] * shares[i] : all * Math.abs(shares[i]);
    addBlock(values, entryOf(plan, places[i], places[i]), bend * stiff, nx, ny);
  }
  if (!isJoined) return;
  addBlock(values, between[0], bend * shares[1], nx, ny);
  addBlock(values, between[1], bend * shares[2], nx, ny);
  addBlock(values, entryOf(plan, places[1], places[2]), bend * shares[1] * shares[2], nx, ny);
}

function addBlock(values: Float64Array, entry: number, stiff: number, nx: number, ny: number): void {
  values[4 * entry] += stiff * nx * nx;
  values[4 * entry + 1] += stiff * nx * ny;
  values[4 * entry + 2] += stiff * nx * ny;
  values[4 * entry + 3] += stiff * ny * ny;
}

/** Index of the entry that holds row `v`, column `w` or the other way round; -1 where the plan has none. */
function entryOf({ blocks, entryStarts, entryRows }: FactorPlan, v: number, w: number): number {
  const column = Math.min(blocks.place[v], blocks.place[w]);
  const row = Math.max(blocks.place[v], blocks.place[w]);
  for (let p = entryStarts[column]; p < entryStarts[column + 1]; p += 1) if (entryRows[p] === row) return p;
  return -1;
}
