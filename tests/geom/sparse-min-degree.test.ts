import { describe, expect, it } from 'vitest';
import { graphOfPairs, type SparseGraph } from '../../src/geom/sparse-graph.ts';
import { minimumDegreeOrder } from '../../src/geom/sparse-min-degree.ts';
import { eliminationTree } from '../../src/geom/sparse-tree.ts';
import { forAll } from '../support/for-all.ts';
import { gridPairs } from './sparse-support.ts';

const range = (from: number, to: number): number[] => Array.from({ length: to - from }, (_, i) => from + i);
const fillOf = (graph: SparseGraph): number =>
  eliminationTree(graph, minimumDegreeOrder(graph)).below.reduce((sum, count) => sum + count, 0);

describe('minimumDegreeOrder', () => {
  it('fills nothing in trees, and next to nothing in cliques put side by side', async () => {
    // A graph whose nodes each met k nodes that all meet, when they came, is eliminated without fill, the last first;
    // bounds in place of counts may miss that by a few.
    const gen = (rand: () => number) => {
      const k = 1 + Math.floor(4 * rand());
      const cliques = [range(0, k)];
      const pairs = range(0, k).flatMap((v) => range(0, v).map((w) => [v, w]));
      for (let v = k; v < 60; v += 1) {
        const clique = cliques[Math.floor(rand() * cliques.length)];
        pairs.push(...clique.map((w) => [v, w]));
        for (const out of clique) cliques.push([...clique.filter((w) => w !== out), v]);
      }
      const names = range(0, 60)
        .map((v) => [rand(), v])
        .sort((a, b) => a[0] - b[0])
        .map(([, v]) => v);
      return pairs.map((pair) => pair.map((v) => names[v]));
    };
    await forAll(gen, (pairs) => {
      const fill = fillOf(graphOfPairs(60, pairs.flat()));
      expect(fill).toBeGreaterThanOrEqual(pairs.length);
      expect(fill).toBeLessThanOrEqual(pairs.length === 59 ? 59 : 1.02 * pairs.length);
    });
  });

  it('closes a ring with the one line less per node that it must', () => {
    const ring = graphOfPairs(
      50,
      range(0, 50).flatMap((v) => [v, (v + 1) % 50]),
    );
    expect(fillOf(ring)).toBe(50 + 47);
  });

  it('leaves a hub that meets all to the end', () => {
    const wheel = graphOfPairs(
      41,
      range(0, 40).flatMap((v) => [v, (v + 1) % 40, v, 40]),
    );
    const order = [...minimumDegreeOrder(wheel)];
    expect(order.indexOf(40)).toBeGreaterThan(36);
    expect(fillOf(wheel)).toBe(40 + 37 + 40);
  });

  it('orders only the first nodes where told, as those that stay meet them', () => {
    // A comb: nodes 0 … 9 in a row, each with a tooth among 10 … 19 that stays.
    const comb = graphOfPairs(
      20,
      range(0, 10).flatMap((v) => [v, 10 + v, ...(v > 0 ? [v - 1, v] : [])]),
    );
    const order = [...minimumDegreeOrder(comb, 10)];
    expect([...order].sort((a, b) => a - b)).toEqual(range(0, 10));
    expect([0, 9]).toContain(order[0]);
    expect([...minimumDegreeOrder(comb, 0)]).toEqual([]);
    // A node that meets many which stay comes after one that meets few.
    const loaded = graphOfPairs(20, [0, 1, ...range(2, 20).flatMap((w) => [0, w])]);
    expect([...minimumDegreeOrder(loaded, 2)]).toEqual([1, 0]);
  });

  it('keeps factors as thin as they were found once', () => {
    // Entries below the diagonal; the lowest that were seen, so that a change which loses one shows.
    const least = [
      [10, 655],
      [20, 4653],
      [40, 29_500],
    ];
    for (const [side, fill] of least)
      expect(fillOf(graphOfPairs(side * side, gridPairs(side)))).toBeLessThanOrEqual(fill);
  });
});
