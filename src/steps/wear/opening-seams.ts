import { MinHeap } from '../../base/min-heap.ts';
import { length3, pointAt3, sub3 } from '../../geom/vec.ts';
import type { OpeningSeams } from '../../model/girth.ts';
import type { SeamChain } from '../../model/seams.ts';

/**
 * Along which seams a part would have to stay open so that it can be put on: the shortest way over seams from one rim to another, which
 * lets the part open at its side; where there is only one rim, or no such way, the shortest way from one place of a rim to another place
 * of it, which takes the part in two halves.
 * @param rims  vertices of each rim.
 * @returns null where no seams lead from rim to rim.
 */
export function seamsThatOpen(
  positions: Float64Array,
  chains: readonly SeamChain[],
  rims: readonly Uint32Array[],
): OpeningSeams | null {
  const links = linksOf(positions, chains);
  const rimOf = new Map(rims.flatMap((rim, i) => Array.from(rim, (v) => [v, i] as const)));
  const starts = [...rimOf.keys()].filter((v) => links.has(v)).sort((a, b) => a - b);
  let best: OpeningSeams | null = null;
  for (const start of starts) {
    for (const way of waysFrom(start, links, rimOf)) {
      const kind = rimOf.get(way.end) === rimOf.get(start) ? 'halves' : 'side';
      const isBetter = best === null || (kind === best.kind ? way.lengthMm < best.lengthMm : kind === 'side');
      if (isBetter)
        best = { chains: way.chains, letters: way.chains.map((i) => chains[i].letter), lengthMm: way.lengthMm, kind };
    }
  }
  return best;
}

interface Link {
  readonly chain: number;
  readonly to: number;
  readonly lengthMm: number;
}

function linksOf(positions: Float64Array, chains: readonly SeamChain[]): Map<number, Link[]> {
  const links = new Map<number, Link[]>();
  const add = (from: number, link: Link): void => void links.set(from, [...(links.get(from) ?? []), link]);
  chains.forEach(({ kind, closed, vertices }, chain) => {
    if (kind === 'open' || closed) return;
    let lengthMm = 0;
    for (let i = 1; i < vertices.length; i += 1)
      lengthMm += length3(sub3(pointAt3(positions, vertices[i]), pointAt3(positions, vertices[i - 1])));
    const [a, b] = [vertices[0], vertices[vertices.length - 1]];
    add(a, { chain, to: b, lengthMm });
    add(b, { chain, to: a, lengthMm });
  });
  return links;
}

/** Shortest ways over seams from a vertex to every other vertex of a rim, none of them through a rim in between (Dijkstra 1959). */
function waysFrom(start: number, links: Map<number, Link[]>, rimOf: Map<number, number>) {
  const best = new Map<number, { lengthMm: number; chains: readonly number[] }>([[start, { lengthMm: 0, chains: [] }]]);
  const done = new Set<number>();
  const ways: { end: number; lengthMm: number; chains: readonly number[] }[] = [];
  const heap = new MinHeap();
  heap.push(0, start);
  while (heap.size > 0) {
    const v = heap.pop().item;
    const here = best.get(v);
    if (here === undefined || done.has(v)) continue;
    done.add(v);
    if (v !== start && rimOf.has(v)) {
      ways.push({ end: v, ...here });
      continue;
    }
    for (const { chain, to, lengthMm } of links.get(v) ?? []) {
      const length = here.lengthMm + lengthMm;
      if (length >= (best.get(to)?.lengthMm ?? Infinity)) continue;
      best.set(to, { lengthMm: length, chains: [...here.chains, chain] });
      heap.push(length, to);
    }
  }
  return ways;
}
