/** Sections looked at along the axis: the order needs the run of the areas, not their last digit. */
export const ORDER_SAMPLES = 240;

/** More ways to have used up the sheets than this are not gone through. */
const MOST_STATES = 20000;

/**
 * The order of chosen sheets that leaves least to sand: thin ones where the solid tapers, thick ones where it runs straight. Every order is
 * weighed, by one pass over how many of each are used up; the layers of a way weigh their thickness times the largest section in them.
 * @param chosen     thicknesses, thickest first, mm.
 * @param startMm    where the first layer begins, from the foot of the solid, mm.
 * @param heightMm   of the solid.
 * @param areas      areas of sections at even steps from foot to top, mm².
 * @returns the thicknesses from the first layer on; of equals, and where there are too many ways, thick ones first.
 */
export function orderSheets(
  chosen: readonly number[],
  startMm: number,
  heightMm: number,
  areas: ArrayLike<number>,
): readonly number[] {
  const kinds = [...new Set(chosen)];
  const counts = kinds.map((kind) => chosen.filter((one) => one === kind).length);
  const strides: number[] = [];
  let states = 1;
  for (const count of counts) {
    strides.push(states);
    states *= count + 1;
  }
  if (kinds.length < 2 || states > MOST_STATES) return chosen;
  const usedOf = (state: number, k: number): number => Math.floor(state / strides[k]) % (counts[k] + 1);
  const cost = new Float64Array(states).fill(Infinity);
  const last = new Int32Array(states).fill(-1);
  cost[0] = 0;
  for (let state = 0; state < states; state += 1) {
    const at = startMm + kinds.reduce((sum, kind, k) => sum + kind * usedOf(state, k), 0);
    for (const [k, kind] of kinds.entries()) {
      if (usedOf(state, k) === counts[k]) continue;
      const next = state + strides[k];
      const own = cost[state] + kind * largestBetween(areas, at / heightMm, (at + kind) / heightMm);
      if (own >= cost[next] - 1e-9 * cost[next]) continue;
      cost[next] = own;
      last[next] = k;
    }
  }
  const order: number[] = [];
  for (let state = states - 1; state > 0; state -= strides[last[state]]) order.push(kinds[last[state]]);
  return order.reverse();
}

function largestBetween(areas: ArrayLike<number>, from: number, to: number): number {
  const top = areas.length - 1;
  let largest = 0;
  const end = Math.min(top, Math.ceil(to * top - 1e-9));
  for (let i = Math.max(0, Math.floor(from * top + 1e-9)); i <= end; i += 1) largest = Math.max(largest, areas[i]);
  return largest;
}
