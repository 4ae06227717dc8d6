/** Up to so many ends the pairs are the best there are; of more, the least turn is taken first. */
const MOST_EXACT = 12;

type Pair = readonly [number, number];

/**
 * Pairs things: as many pairs as there can be, and of all such pairings that of least cost. Exact by going through all sets of those that are left, up to 12.
 * @param cost    of a pair, the same both ways.
 * @param mayPair whether two may be a pair.
 */
export function leastPairs(
  ends: readonly number[],
  cost: (a: number, b: number) => number,
  mayPair: (a: number, b: number) => boolean,
): readonly Pair[] {
  if (ends.length > MOST_EXACT) return nearestFirst(ends, cost, mayPair);
  const full = (1 << ends.length) - 1;
  // best[set]: pairs and cost for those that are still to be paired.
  const pairs = new Int32Array(full + 1);
  const costs = new Float64Array(full + 1);
  const choice = new Int32Array(full + 1).fill(-1);
  for (let set = 1; set <= full; set += 1) {
    const first = 31 - Math.clz32(set & -set);
    const rest = set & ~(1 << first);
    [pairs[set], costs[set]] = [pairs[rest], costs[rest]];
    for (let j = first + 1; j < ends.length; j += 1) {
      if ((rest & (1 << j)) === 0 || !mayPair(ends[first], ends[j])) continue;
      const without = rest & ~(1 << j);
      const [count, sum] = [pairs[without] + 1, costs[without] + cost(ends[first], ends[j])];
      if (count > pairs[set] || (count === pairs[set] && sum < costs[set]))
        [pairs[set], costs[set], choice[set]] = [count, sum, j];
    }
  }
  const found: Pair[] = [];
  for (let set = full; set > 0;) {
    const first = 31 - Math.clz32(set & -set);
    const j = choice[set];
    if (j >= 0) found.push([ends[first], ends[j]]);
    set &= ~(1 << first) & (j >= 0 ? ~(1 << j) : -1);
  }
  return found;
}

/** How many pairs there can be at most. */
export const mostPairs = (ends: readonly number[], mayPair: (a: number, b: number) => boolean): number =>
  ends.length > MOST_EXACT ? Math.floor(ends.length / 2) : leastPairs(ends, () => 0, mayPair).length;

function nearestFirst(
  ends: readonly number[],
  cost: (a: number, b: number) => number,
  mayPair: (a: number, b: number) => boolean,
): readonly Pair[] {
  const all = ends.flatMap((a, i) =>
    ends.slice(i + 1).flatMap((b) => (mayPair(a, b) ? [{ a, b, turn: cost(a, b) }] : [])),
  );
  all.sort((p, q) => p.turn - q.turn || p.a - q.a || p.b - q.b);
  const used = new Set<number>();
  const found: Pair[] = [];
  for (const { a, b } of all) {
    if (used.has(a) || used.has(b)) continue;
    used.add(a).add(b);
    found.push([a, b]);
  }
  return found;
}
