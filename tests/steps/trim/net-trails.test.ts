import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/base/random.ts';
import type { LineNetWish, NetLine } from '../../../src/model/trim.ts';
import { coverNet } from '../../../src/steps/trim/net-trails.ts';

type Corner = readonly [number, number, number];

/** Straight lines between corners in space. */
function netOf(
  corners: readonly Corner[],
  pairs: readonly (readonly [number, number])[],
  extra: Partial<LineNetWish> = {},
): LineNetWish {
  const way = (a: number, b: number): number[] => corners[b].map((x, axis) => x - corners[a][axis]);
  const size = (v: readonly number[]): number => Math.hypot(v[0], v[1], v[2]);
  const lines = pairs.map(([from, to]): NetLine => ({ from, to, lengthMm: size(way(from, to)), isSeen: true }));
  const out = (end: number): number[] => {
    const { from, to } = lines[end >> 1];
    return end % 2 === 0 ? way(from, to) : way(to, from);
  };
  return {
    nodeCount: corners.length,
    lines,
    mostTurnRad: Math.PI,
    turn: (a, b) => {
      const [p, q] = [out(a), out(b)];
      const cosine = (p[0] * q[0] + p[1] * q[1] + p[2] * q[2]) / (size(p) * size(q));
      return Math.PI - Math.acos(Math.max(-1, Math.min(1, cosine)));
    },
    ...extra,
  };
}

/** Every line that is seen lies in one trail, once, and runs on from node to node. */
function checkCover(net: LineNetWish): void {
  const { trails } = coverNet(net);
  const used = trails.flatMap(({ lines }) => lines.map(({ line }) => line)).sort((a, b) => a - b);
  expect(used).toEqual(net.lines.flatMap(({ isSeen }, i) => (isSeen ? [i] : [])));
  for (const { lines, closed } of trails) {
    const ends = lines.map(({ line, isReversed }) => {
      const { from, to } = net.lines[line];
      return isReversed ? [to, from] : [from, to];
    });
    for (let i = 1; i < ends.length; i += 1) expect(ends[i][0]).toBe(ends[i - 1][1]);
    if (closed) expect(ends[0][0]).toBe(ends[ends.length - 1][1]);
  }
}

/** The fewest runs, by trying every set of pairs at every node; and the least turning of all with so many. */
function bruteForce(net: LineNetWish): { count: number; turn: number } {
  const ends: number[][] = Array.from({ length: net.nodeCount }, () => []);
  for (const [i, { from, to }] of net.lines.entries()) {
    ends[from].push(2 * i);
    ends[to].push(2 * i + 1);
  }
  const mate = new Int32Array(2 * net.lines.length).fill(-1);
  let best = { count: Infinity, turn: Infinity };
  const runs = (): number => {
    const seen = new Uint8Array(net.lines.length);
    let count = 0;
    const follow = (start: number): void => {
      count += 1;
      for (let end = start; ;) {
        seen[end >> 1] = 1;
        const next = mate[end ^ 1];
        if (next < 0 || next === start) break;
        end = next;
      }
    };
    for (let end = 0; end < mate.length; end += 1) if (mate[end] < 0 && seen[end >> 1] === 0) follow(end);
    for (let i = 0; i < net.lines.length; i += 1) if (seen[i] === 0) follow(2 * i);
    return count;
  };
  const tryNode = (node: number, left: readonly number[], turn: number): void => {
    if (left.length === 0) {
      if (node + 1 < net.nodeCount) return tryNode(node + 1, ends[node + 1], turn);
      const count = runs();
      if (count < best.count || (count === best.count && turn < best.turn - 1e-12)) best = { count, turn };
      return;
    }
    const [first, ...rest] = left;
    tryNode(node, rest, turn);
    for (const other of rest) {
      const one = net.turn(first, other);
      if (one > net.mostTurnRad + 1e-9) continue;
      [mate[first], mate[other]] = [other, first];
      tryNode(
        node,
        rest.filter((end) => end !== other),
        turn + one,
      );
      [mate[first], mate[other]] = [-1, -1];
    }
  };
  tryNode(0, ends[0], 0);
  return best;
}

const CUBE: Corner[] = [0, 1, 2, 3, 4, 5, 6, 7].map((i) => [i & 1, (i >> 1) & 1, i >> 2]);
const CUBE_EDGES = [0, 1, 2, 3, 4, 5, 6, 7].flatMap((i) =>
  [1, 2, 4].flatMap((bit) => ((i & bit) === 0 ? [[i, i | bit] as const] : [])),
);
const OCTAHEDRON: Corner[] = [
  [1, 0, 0],
  [-1, 0, 0],
  [0, 1, 0],
  [0, -1, 0],
  [0, 0, 1],
  [0, 0, -1],
];
const OCTAHEDRON_EDGES = OCTAHEDRON.flatMap((_, i) =>
  OCTAHEDRON.flatMap((__, j) => (j > i && (i ^ j) !== 1 ? [[i, j] as const] : [])),
);

describe('strips over nets of seams', () => {
  it('takes four for the edges of a cube: eight corners of three edges', () => {
    const cover = coverNet(netOf(CUBE, CUBE_EDGES));
    expect([cover.fewestTrails, cover.reachedTrails]).toEqual([4, 4]);
    expect(cover.lengthMm).toBeCloseTo(12, 12);
    checkCover(netOf(CUBE, CUBE_EDGES));
  });

  it('goes round all edges of an octahedron in one: four edges at each corner', () => {
    const net = netOf(OCTAHEDRON, OCTAHEDRON_EDGES);
    const cover = coverNet(net);
    expect([cover.fewestTrails, cover.reachedTrails]).toEqual([1, 1]);
    expect(cover.trails[0].closed).toBe(true);
    expect(cover.lengthMm).toBeCloseTo(12 * Math.SQRT2, 12);
    checkCover(net);
  });

  it('keeps great circles apart where a strip may not turn by much', () => {
    // Straight on at each corner of an octahedron is 90 degrees between its edges in space.
    const net = netOf(OCTAHEDRON, OCTAHEDRON_EDGES, { mostTurnRad: (Math.PI / 180) * 91 });
    const cover = coverNet(net);
    expect(cover.reachedTrails).toBe(bruteForce(net).count);
    checkCover(net);
  });

  it('cuts long runs into lengths that are alike, and leaves out what is not seen', () => {
    const net = netOf(CUBE, CUBE_EDGES, { mostLengthMm: 2 });
    expect(coverNet(net).strips).toBe(
      coverNet(net).trails.reduce((sum, one) => sum + Math.ceil(one.lengthMm / 2 - 1e-9), 0),
    );
    const hidden = { ...net, lines: net.lines.map((one, i) => ({ ...one, isSeen: i !== 5 })) };
    expect(coverNet(hidden).fewestTrails).toBe(3);
    checkCover(hidden);
  });

  it('covers a ring without a node and a line of one', () => {
    const ring: NetLine = { from: 0, to: 0, lengthMm: 30, isSeen: true };
    const cover = coverNet({ nodeCount: 1, lines: [ring], turn: () => 0, mostTurnRad: 1 });
    expect(cover.trails).toEqual([{ lines: [{ line: 0, isReversed: false }], closed: true, lengthMm: 30, parts: 1 }]);
  });

  it('is as few, and turns as little or nearly so, as the best of all pairings of random nets', () => {
    const random = seededRandom(5);
    let [same, excess] = [0, 0];
    const RUNS = 60;
    for (let run = 0; run < RUNS; run += 1) {
      const n = 4 + Math.floor(random() * 3);
      const corners = Array.from({ length: n }, (): Corner => [random(), random(), random()]);
      const pairs: [number, number][] = [];
      for (let i = 0; i < n; i += 1)
        for (let j = i + 1; j < n; j += 1) if (random() < 0.6 && pairs.length < 9) pairs.push([i, j]);
      if (pairs.length === 0) continue;
      const net = netOf(corners, pairs, run % 3 === 0 ? { mostTurnRad: 2.2 } : {});
      const [cover, best] = [coverNet(net), bruteForce(net)];
      checkCover(net);
      if (run % 3 !== 0) expect(cover.reachedTrails).toBe(cover.fewestTrails);
      expect(cover.reachedTrails).toBe(best.count);
      expect(cover.fewestWithTurns).toBeLessThanOrEqual(best.count);
      expect(cover.turnRad).toBeGreaterThanOrEqual(best.turn - 1e-9);
      if (cover.turnRad < best.turn + 1e-9) same += 1;
      excess = Math.max(excess, cover.turnRad - best.turn);
    }
    expect(same).toBeGreaterThan(0.95 * RUNS);
    expect(excess).toBeLessThan(0.5);
  });
});
