import type { Stepwise } from '../../base/stepwise.ts';

/** Edges handed over in one stretch: a few milliseconds. */
const STRETCH_EDGES = 32_768;

/** The sides of all polygons. Side `i` runs from corner `i` to corner `next[i]` of the packed list. */
export interface PolygonSides {
  readonly next: Uint32Array;
  readonly face: Uint32Array;
  /** Sides ordered by their lower vertex, then their higher, then their own number, so that sides of one edge stand together. */
  readonly order: Uint32Array;
}

export function* polygonSideSteps(starts: Uint32Array, corners: Uint32Array): Stepwise<PolygonSides> {
  const next = new Uint32Array(corners.length);
  const face = new Uint32Array(corners.length);
  for (let f = 0; f + 1 < starts.length; f += 1) {
    for (let i = starts[f]; i < starts[f + 1]; i += 1) {
      next[i] = i + 1 < starts[f + 1] ? i + 1 : starts[f];
      face[i] = f;
    }
  }
  yield;
  let keys = 0;
  for (const v of corners) keys = Math.max(keys, v + 1);
  const low = new Uint32Array(corners.length);
  const high = new Uint32Array(corners.length);
  for (let i = 0; i < corners.length; i += 1) {
    low[i] = Math.min(corners[i], corners[next[i]]);
    high[i] = Math.max(corners[i], corners[next[i]]);
  }
  yield;
  const byHigh = sortedBy(
    high,
    keys,
    new Uint32Array(corners.length).map((_, i) => i),
  );
  yield;
  return { next, face, order: sortedBy(low, keys, byHigh) };
}

/** Hands over each edge as its sides `order[from .. to)`, edges in order of their lower vertex, then their higher. */
export function* eachEdgeSteps(
  { order, next }: PolygonSides,
  corners: Uint32Array,
  use: (from: number, to: number) => void,
): Stepwise<void> {
  for (let from = 0, edge = 0; from < order.length; edge += 1) {
    if (edge % STRETCH_EDGES === 0) yield;
    let to = from + 1;
    while (to < order.length && isSameEdge(corners, next, order[from], order[to])) to += 1;
    use(from, to);
    from = to;
  }
}

/** True when two sides join the same two vertices. */
function isSameEdge(corners: Uint32Array, next: Uint32Array, i: number, j: number): boolean {
  const [a, b] = [corners[i], corners[next[i]]];
  const [c, d] = [corners[j], corners[next[j]]];
  return (a === c && b === d) || (a === d && b === c);
}

/** Stable counting sort of `items` by `key[item]`, each key below `keys`. */
function sortedBy(key: Uint32Array, keys: number, items: Uint32Array): Uint32Array {
  const starts = new Uint32Array(keys + 1);
  for (const item of items) starts[key[item] + 1] += 1;
  for (let k = 0; k < keys; k += 1) starts[k + 1] += starts[k];
  const sorted = new Uint32Array(items.length);
  for (const item of items) sorted[starts[key[item]]++] = item;
  return sorted;
}
