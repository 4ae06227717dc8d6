import { describe, expect, it } from 'vitest';
import { runAtOnce } from '../../src/base/stepwise.ts';
import { factorBytes, SparseFactor } from '../../src/geom/sparse-factor.ts';
import { graphOfPairs, type SparseGraph } from '../../src/geom/sparse-graph.ts';
import { entryBetween, planFactor, planSteps, type FactorPlan } from '../../src/geom/sparse-plan.ts';
import { forAll } from '../support/for-all.ts';
import { gridPairs } from './sparse-support.ts';

const range = (from: number, to: number): number[] => Array.from({ length: to - from }, (_, i) => from + i);

/** Rows below the diagonal in each column of the factor, by playing the elimination with sets: slow and sure. */
function columnsBySets(graph: SparseGraph, order: Int32Array): Set<number>[] {
  const place = new Map([...order].map((v, k) => [v, k]));
  const columns = [...order].map((v, k) => {
    const met = [...graph.neighbours.slice(graph.starts[v], graph.starts[v + 1])].map((w) => place.get(w) ?? NaN);
    return new Set(met.filter((row) => row > k));
  });
  for (const column of columns) {
    const first = Math.min(...column);
    for (const row of column) if (row !== first) columns[first].add(row);
  }
  return columns;
}

/** Holds every field of a plan against the factor found by sets. */
function expectRight(plan: FactorPlan, graph: SparseGraph): void {
  const { blocks, rowStarts, rows, rowInParent, panelStarts, entryStarts, entryRows, entryPanelRow } = plan;
  const columns = columnsBySets(graph, blocks.order);
  expect(plan.size).toBe(graph.size);
  expect([...blocks.order].sort((a, b) => a - b)).toEqual(range(0, graph.size));
  expect([...blocks.place].map((k) => blocks.order[k])).toEqual(range(0, graph.size));
  expect([blocks.starts[0], blocks.starts[blocks.count], blocks.starts.length]).toEqual([
    0,
    graph.size,
    blocks.count + 1,
  ]);
  const blockOf = range(0, graph.size).map((c) => blocks.starts.findLastIndex((start) => start <= c));
  const rowsOf = (s: number): number[] => [...rows.slice(rowStarts[s], rowStarts[s + 1])];
  let [largest, fill] = [0, 0];
  for (let s = 0; s < blocks.count; s += 1) {
    const [first, end] = [blocks.starts[s], blocks.starts[s + 1]];
    const below = new Set(range(first, end).flatMap((c) => [...columns[c]].filter((row) => row >= end)));
    expect(rowsOf(s)).toEqual([...below].sort((a, b) => a - b));
    expect(blocks.below[s]).toBe(below.size);
    const parent = below.size === 0 ? -1 : blockOf[Math.min(...below)];
    expect(blocks.parent[s]).toBe(parent);
    if (parent >= 0) {
      const local = [...range(blocks.starts[parent], blocks.starts[parent + 1]), ...rowsOf(parent)];
      expect([...rowInParent.slice(rowStarts[s], rowStarts[s + 1])]).toEqual(
        rowsOf(s).map((row) => local.indexOf(row)),
      );
    }
    const own = [...range(first, end), ...rowsOf(s)];
    for (let c = first; c < end; c += 1) {
      const v = blocks.order[c];
      const met = [...graph.neighbours.slice(graph.starts[v], graph.starts[v + 1])].map((w) => blocks.place[w]);
      const entries = [c, ...met.filter((row) => row > c).sort((a, b) => a - b)];
      expect([...entryRows.slice(entryStarts[c], entryStarts[c + 1])]).toEqual(entries);
      const panelRows = [...entryPanelRow.slice(entryStarts[c], entryStarts[c + 1])];
      expect(panelRows).toEqual(entries.map((row) => own.indexOf(row)));
    }
    expect(panelStarts[s]).toBe(fill);
    fill += (end - first) * own.length;
    largest = Math.max(largest, own.length);
  }
  expect([plan.fill, panelStarts[blocks.count], plan.largestFront]).toEqual([fill, fill, largest]);
  expectRoom(plan);
}

/** Plays the factorisation on two stacks: what a block finds of its children must lie on top of the other one. */
function expectRoom({ blocks, odd, stackSizes }: FactorPlan): void {
  const stacks: number[][] = [[], []];
  const most = [0, 0];
  const room = (stack: readonly number[]): number => stack.reduce((sum, s) => sum + blocks.below[s] ** 2, 0);
  for (let s = 0; s < blocks.count; s += 1) {
    const parent = blocks.parent[s];
    expect(odd[s]).toBe(parent < 0 ? 0 : 1 - odd[parent]);
    stacks[odd[s]].push(s);
    most[odd[s]] = Math.max(most[odd[s]], room(stacks[odd[s]]));
    const children = range(0, s).filter((c) => blocks.parent[c] === s);
    const other = stacks[1 - odd[s]];
    expect(other.splice(other.length - children.length)).toEqual(children);
  }
  expect(stackSizes).toEqual(most);
}

describe('planFactor', () => {
  it('foresees the factor that elimination with sets finds', async () => {
    const gen = (rand: () => number) => {
      const size = 1 + Math.floor(26 * rand());
      const meetings = 2 * Math.floor(size * 1.6 * rand());
      const pairs = Array.from({ length: meetings }, () => Math.floor(size * rand()));
      const order = range(0, size)
        .map((v) => [rand(), v])
        .sort((a, b) => a[0] - b[0])
        .map(([, v]) => v);
      return { size, pairs, order: rand() < 0.5 ? order : null };
    };
    await forAll(gen, ({ size, pairs, order }) => {
      const graph = graphOfPairs(size, pairs);
      expectRight(order === null ? planFactor(graph) : planFactor(graph, Int32Array.from(order)), graph);
    });
  });

  it('foresees that of a grid, and of nothing', () => {
    const graph = graphOfPairs(64, gridPairs(8));
    expectRight(planFactor(graph), graph);
    const rows = Int32Array.from(range(0, 64));
    expectRight(runAtOnce(planSteps(graph, rows)), graph);
    const none = planFactor(graphOfPairs(0, []));
    expect([none.size, none.fill, none.largestFront, none.blocks.count, ...none.stackSizes]).toEqual([
      0, 0, 0, 0, 0, 0,
    ]);
  });

  it('makes one block of nodes that all meet, and of a few in a row', () => {
    const full = planFactor(
      graphOfPairs(
        30,
        range(0, 30).flatMap((v) => range(0, v).flatMap((w) => [v, w])),
      ),
    );
    expect([...full.blocks.starts]).toEqual([0, 30]);
    const row = (size: number) =>
      planFactor(
        graphOfPairs(
          size,
          range(1, size).flatMap((v) => [v - 1, v]),
        ),
        Int32Array.from(range(0, size)),
      );
    // Up to six columns are joined whatever zeros it costs, more while few are stored.
    expect([...row(6).blocks.starts]).toEqual([0, 6]);
    expect([...row(60).blocks.starts].slice(1).every((end, i, all) => end - (all[i - 1] ?? 0) <= 6)).toBe(true);
    expect(row(60).blocks.count).toBeLessThan(20);
  });

  it('stores few zeros beside the factor itself', () => {
    const graph = graphOfPairs(900, gridPairs(30));
    const plan = planFactor(graph);
    const columns = columnsBySets(graph, plan.blocks.order);
    for (let s = 0; s < plan.blocks.count; s += 1) {
      const [first, end] = [plan.blocks.starts[s], plan.blocks.starts[s + 1]];
      const width = end - first;
      const stored = (width * (width + 1)) / 2 + width * plan.blocks.below[s];
      const needed = range(first, end).reduce((sum, c) => sum + 1 + columns[c].size, 0);
      expect(1 - needed / stored).toBeLessThanOrEqual(width <= 6 ? 1 : width <= 24 ? 0.25 : 0.06);
    }
    expect(plan.blocks.count).toBeLessThan(900 / 4);
  });
});

describe('entryBetween', () => {
  it('finds the entry of two nodes, whichever is named first', () => {
    const graph = graphOfPairs(5, [0, 1, 1, 2, 2, 3, 3, 4, 4, 0]);
    const plan = planFactor(graph);
    const pairs = [
      [0, 1],
      [1, 2],
      [2, 3],
      [3, 4],
      [4, 0],
      [0, 0],
      [1, 1],
      [2, 2],
      [3, 3],
      [4, 4],
    ];
    const found = pairs.map(([v, w]) => entryBetween(plan, v, w));
    expect([...found].sort((a, b) => a - b)).toEqual(range(0, 10));
    expect(pairs.map(([v, w]) => entryBetween(plan, w, v))).toEqual(found);
    expect(() => entryBetween(plan, 0, 2)).toThrow(new RangeError('no entry 0, 2'));
    expect(() => entryBetween(plan, 3, 1)).toThrow(new RangeError('no entry 3, 1'));
  });
});

describe('factorBytes', () => {
  it('are what a factor of two nodes that meet takes', () => {
    const plan = planFactor(graphOfPairs(2, [0, 1]));
    // One panel of 2 by 2, no squares, three entries, four numbers to solve for, of 8 bytes.
    expect(factorBytes(plan, 1)).toBe(8 * (4 + 3 + 4));
    expect(factorBytes(plan, 2)).toBe(8 * (16 + 12 + 4));
  });

  it('grow with panels, both stacks and entries', () => {
    const plan = planFactor(graphOfPairs(900, gridPairs(30)));
    expect(Math.min(...plan.stackSizes)).toBeGreaterThan(0);
    const numbers = plan.fill + plan.stackSizes[0] + plan.stackSizes[1] + plan.entryRows.length;
    expect(factorBytes(plan, 1) / 8 - 1800).toBe(numbers);
    expect(new SparseFactor(plan, 2).values).toHaveLength(4 * plan.entryRows.length);
    expect(factorBytes(plan, 2) / 8 - 1800).toBe(4 * numbers);
  });
});
