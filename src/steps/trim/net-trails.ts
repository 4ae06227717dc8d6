import type { LineNetWish, NetCover, NetTrail } from '../../model/trim.ts';
import { leastPairs, mostPairs } from './least-pairs.ts';

/** Turns that differ by less count as alike, radians. */
const SAME_TURN = 1e-9;

/**
 * The shortest set of strips that covers all lines of a net that are seen: each line once, so the least length there can be, in as few runs as possible. A part
 * of a net that hangs together, with `o` nodes where an odd number of its lines meet, is run through in no fewer than `max(1, o / 2)` runs, and without limits
 * on turns always in that many (Euler; Hierholzer and Wiener, "Ueber die Möglichkeit, einen Linienzug ohne Wiederholung und ohne Unterbrechung zu umfahren",
 * 1873). At each node the ends are paired for the most pairs and then the least turning, exactly up to {@link mostPairs}' limit; rounds that come out closed
 * are then opened into their neighbours where that costs the least turning, and partners exchanged as long as that turns less. With a limit on turns, pairs beyond it do not count, and both bounds are told.
 */
export function coverNet(net: LineNetWish): NetCover {
  const { lines, nodeCount, mostTurnRad, mostLengthMm = Infinity } = net;
  const nodeOf = (end: number): number => (end % 2 === 0 ? lines[end >> 1].from : lines[end >> 1].to);
  const endsAt: number[][] = Array.from({ length: nodeCount }, () => []);
  for (const [i, { isSeen }] of lines.entries())
    if (isSeen) for (const end of [2 * i, 2 * i + 1]) endsAt[nodeOf(end)].push(end);
  const mate = new Int32Array(2 * lines.length).fill(-1);
  const turnOf = (a: number, b: number): number => net.turn(a, b);
  const mayPair = (a: number, b: number): boolean => a !== b && turnOf(a, b) <= mostTurnRad + SAME_TURN;
  let mostPaired = 0;
  for (const ends of endsAt) {
    for (const [a, b] of leastPairs(ends, turnOf, mayPair)) [mate[a], mate[b]] = [b, a];
    mostPaired += mostPairs(ends, mayPair);
  }
  mergeRounds(lines.length, endsAt, mate, turnOf, mayPair);
  improve(endsAt, mate, turnOf, mayPair);

  const part = partsOf(net);
  const partCount = new Set([...part.keys()].filter((i) => lines[i].isSeen).map((i) => part[i])).size;
  const oddOfPart = new Map<number, number>();
  let seen = 0;
  for (const ends of endsAt)
    if (ends.length % 2 === 1) oddOfPart.set(part[ends[0] >> 1], (oddOfPart.get(part[ends[0] >> 1]) ?? 0) + 1);
  for (const { isSeen } of lines) if (isSeen) seen += 1;
  const fewestTrails = [...oddOfPart.values()].reduce((sum, odd) => sum + odd / 2, 0) + partCount - oddOfPart.size;

  const trails = trailsOf(net, mate);
  return {
    trails,
    fewestTrails,
    // Every run that is not closed has two free ends; no pairing has more pairs than this.
    fewestWithTurns: Math.max(fewestTrails, seen - mostPaired),
    reachedTrails: trails.length,
    strips: trails.reduce((sum, { parts }) => sum + parts, 0),
    lengthMm: trails.reduce((sum, { lengthMm }) => sum + lengthMm, 0),
    // A closed run has its joint at its sharpest turn, where nothing need be bent.
    turnRad: trails.reduce((sum, { lines: own }) => sum + turnWithin(own, turnOf), 0),
  };

  function trailsOf({ lines: all }: LineNetWish, pairs: Int32Array): NetTrail[] {
    const isDone = new Uint8Array(all.length);
    const made: NetTrail[] = [];
    const run = (start: number): void => {
      const own: { line: number; isReversed: boolean }[] = [];
      let [end, lengthMm] = [start, 0];
      for (;;) {
        const line = end >> 1;
        isDone[line] = 1;
        own.push({ line, isReversed: end % 2 === 1 });
        lengthMm += all[line].lengthMm;
        const next = pairs[end ^ 1];
        if (next < 0 || next === start) break;
        end = next;
      }
      const parts = Math.max(1, Math.ceil(lengthMm / mostLengthMm - 1e-9));
      made.push({ lines: own, closed: pairs[start] >= 0, lengthMm, parts });
    };
    for (let end = 0; end < 2 * all.length; end += 1)
      if (all[end >> 1].isSeen && isDone[end >> 1] === 0 && pairs[end] < 0) run(end);
    for (let line = 0; line < all.length; line += 1)
      if (all[line].isSeen && isDone[line] === 0) run(sharpestStart(2 * line, pairs, turnOf));
    return made;
  }
}

type Turn = (a: number, b: number) => number;
type MayPair = (a: number, b: number) => boolean;

type Run = NetTrail['lines'];

/** Turns between the lines of a run, added up, radians. */
const turnWithin = (own: Run, turn: Turn): number =>
  own.reduce((sum, { line, isReversed }, i) => {
    if (i === 0) return sum;
    const before = own[i - 1];
    return sum + turn(2 * before.line + (before.isReversed ? 0 : 1), 2 * line + (isReversed ? 1 : 0));
  }, 0);

/** The end of a closed run at which it leaves its sharpest turn. */
function sharpestStart(start: number, mate: Int32Array, turn: Turn): number {
  let [best, most] = [start, -1];
  for (let end = start; ;) {
    const one = turn(mate[end], end);
    if (one > most + SAME_TURN) [best, most] = [end, one];
    end = mate[end ^ 1];
    if (end === start) return best;
  }
}

/** Opens closed runs into others at nodes they share, the least turning first, until none can be. */
function mergeRounds(
  lineCount: number,
  endsAt: readonly number[][],
  mate: Int32Array,
  turn: Turn,
  mayPair: MayPair,
): void {
  for (let left = lineCount; left > 0; left -= 1) {
    const { run, isClosed } = runsOf(mate);
    let best: { cost: number; pairs: readonly (readonly [number, number])[]; free: number } | null = null;
    for (const ends of endsAt) {
      for (const a of ends) {
        const b = mate[a];
        if (b < a || isClosed[run[a >> 1]] === 0) continue; // each pair of a closed run once
        for (const c of ends) {
          if (run[c >> 1] === run[a >> 1]) continue;
          const d = mate[c];
          const before = turn(a, b) + (d >= 0 ? turn(c, d) : 0);
          for (const [p, q] of [
            [a, b],
            [b, a],
          ]) {
            if (!mayPair(p, c) || (d >= 0 && !mayPair(q, d))) continue;
            const cost = turn(p, c) + (d >= 0 ? turn(q, d) : 0) - before;
            if (best !== null && cost >= best.cost - SAME_TURN) continue;
            best = {
              cost,
              pairs:
                d >= 0
                  ? [
                      [p, c],
                      [q, d],
                    ]
                  : [[p, c]],
              free: d >= 0 ? -1 : q,
            };
          }
        }
      }
    }
    if (best === null) return;
    if (best.free >= 0) mate[best.free] = -1;
    for (const [p, q] of best.pairs) [mate[p], mate[q]] = [q, p];
  }
}

/** Exchanges partners of two ends at a node where that turns less and makes no more runs, until nothing is gained. */
function improve(endsAt: readonly number[][], mate: Int32Array, turn: Turn, mayPair: MayPair): void {
  let count = runsOf(mate).count;
  for (let isBetter = true; isBetter;) {
    isBetter = false;
    for (const ends of endsAt)
      for (const a of ends)
        for (const c of ends) {
          const [b, d] = [mate[a], mate[c]];
          // a b and c d become a c and b d; c may be free, then b is.
          if (b < 0 || a === c || b === c || !mayPair(a, c) || (d >= 0 && !mayPair(b, d))) continue;
          const gain = turn(a, b) + (d >= 0 ? turn(c, d) - turn(b, d) : 0) - turn(a, c);
          if (gain <= SAME_TURN) continue;
          [mate[a], mate[c], mate[b]] = [c, a, d];
          if (d >= 0) mate[d] = b;
          const now = runsOf(mate).count;
          if (now <= count) {
            [count, isBetter] = [now, true];
            continue;
          }
          [mate[a], mate[b], mate[c]] = [b, a, d];
          if (d >= 0) mate[d] = c;
        }
  }
}

/** The run each line lies in, and whether that is closed. */
function runsOf(mate: Int32Array): { run: Int32Array; isClosed: Uint8Array; count: number } {
  const lineCount = mate.length / 2;
  const run = new Int32Array(lineCount).fill(-1);
  const isClosed = new Uint8Array(lineCount);
  let found = 0;
  const follow = (start: number): void => {
    let end = start;
    for (;;) {
      run[end >> 1] = found;
      const next = mate[end ^ 1];
      if (next < 0) break;
      if (next === start) {
        isClosed[found] = 1;
        break;
      }
      end = next;
    }
    found += 1;
  };
  for (let end = 0; end < mate.length; end += 1) if (mate[end] < 0 && run[end >> 1] < 0) follow(end);
  for (let line = 0; line < lineCount; line += 1) if (run[line] < 0) follow(2 * line);
  return { run, isClosed, count: found };
}

/** For each line the lowest node of the part of the net that it hangs together with, over lines that are seen. */
function partsOf({ lines, nodeCount }: LineNetWish): number[] {
  const root = Array.from({ length: nodeCount }, (_, i) => i);
  const rootOf = (i: number): number => {
    let at = i;
    while (root[at] !== at) at = root[at] = root[root[at]];
    return at;
  };
  for (const { from, to, isSeen } of lines) {
    const [a, b] = [rootOf(from), rootOf(to)];
    if (isSeen && a !== b) root[Math.max(a, b)] = Math.min(a, b);
  }
  return lines.map(({ from }) => rootOf(from));
}
