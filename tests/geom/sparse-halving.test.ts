import { describe, expect, it } from 'vitest';
import { graphOfPairs, type SparseGraph } from '../../src/geom/sparse-graph.ts';
import { halvingOrder } from '../../src/geom/sparse-halving.ts';
import { forAll } from '../support/for-all.ts';

const range = (from: number, to: number): number[] => Array.from({ length: to - from }, (_, i) => from + i);
const row = (size: number): SparseGraph =>
  graphOfPairs(
    size,
    range(1, size).flatMap((v) => [v - 1, v]),
  );

/** Columns by rows of points, each joined to the next along and across, `dx` and `dy` apart. */
function grid(columns: number, rows: number, dx: number, dy: number): { graph: SparseGraph; points: Float64Array } {
  const pairs = range(0, columns * rows).flatMap((v) => [
    ...((v + 1) % columns > 0 ? [v, v + 1] : []),
    ...(v + columns < columns * rows ? [v, v + columns] : []),
  ]);
  const points = range(0, columns * rows).flatMap((v) => [dx * (v % columns), 3, -dy * Math.floor(v / columns)]);
  return { graph: graphOfPairs(columns * rows, pairs), points: Float64Array.from(points) };
}

describe('halvingOrder', () => {
  it('parts a row in the middle and its halves again, whichever way it lies', () => {
    // 17 in 0 … 6, 7 and 8 … 16, these in 8 … 10, 11 and 12 … 16: parts of up to eight stay.
    const expected = [...range(0, 7), 8, 9, 10, ...range(12, 17), 11, 7];
    for (const axis of [0, 1, 2]) {
      const points = new Float64Array(51);
      for (let v = 0; v < 17; v += 1) {
        points[3 * v + axis] = 2 * v - 100;
        points[3 * v + ((axis + 1) % 3)] = 20 + (v % 2);
      }
      expect([...halvingOrder(row(17), points)]).toEqual(expected);
    }
    expect([...halvingOrder(row(8), Float64Array.from(range(0, 24)))]).toEqual(range(0, 8));
  });

  it('leaves nodes without a point to the end, in their order', () => {
    const points = Float64Array.from(range(0, 17).flatMap((v) => [v, 0, 0]));
    const order = halvingOrder(row(20), points);
    expect([...order.slice(17)]).toEqual([17, 18, 19]);
    expect([...order.slice(0, 17)].sort((a, b) => a - b)).toEqual(range(0, 17));
    expect(order[16]).toBe(7);
  });

  it('takes one node that meets all of the other side instead of these', () => {
    const points = Float64Array.from(range(0, 17).flatMap((v) => [v < 8 ? v : v + 100, 0, 0]));
    const fan = graphOfPairs(
      17,
      range(0, 8).flatMap((v) => [v, 8]),
    );
    expect(halvingOrder(fan, points)[16]).toBe(8);
    const fanBack = graphOfPairs(
      17,
      range(8, 17).flatMap((v) => [v, 3]),
    );
    expect(halvingOrder(fanBack, points)[16]).toBe(3);
  });

  it('parts the halves by the fewest nodes there can be', async () => {
    const gen = (rand: () => number) =>
      Array.from({ length: 3 + Math.floor(22 * rand()) }, () => [Math.floor(8 * rand()), 8 + Math.floor(8 * rand())]);
    await forAll(
      gen,
      (pairs) => {
        const points = Float64Array.from(range(0, 16).flatMap((v) => [v, 0, 0]));
        const order = halvingOrder(graphOfPairs(16, pairs.flat()), points);
        // The fewest of all sets of the first half, with all that the others of it meet.
        const covers = range(0, 256).map((set) => {
          const far = new Set(pairs.filter(([v]) => (set & (1 << v)) === 0).map(([, w]) => w));
          return far.size + range(0, 8).filter((v) => (set & (1 << v)) !== 0).length;
        });
        const last = new Set(order.slice(16 - Math.min(...covers)));
        expect(pairs.filter(([v, w]) => !last.has(v) && !last.has(w))).toEqual([]);
      },
      { runs: 40 },
    );
  });

  it('cuts a small part across its widest spread, and of a large one tries the second widest too', () => {
    const small = grid(10, 40, 100, 1);
    const column = [...halvingOrder(small.graph, small.points).slice(-40)];
    expect(new Set(column.map((v) => v % 10)).size).toBe(1);
    const large = grid(10, 60, 100, 1);
    const line = [...halvingOrder(large.graph, large.points).slice(-10)];
    expect(new Set(line.map((v) => Math.floor(v / 10))).size).toBe(1);
    const wide = grid(60, 10, 1, 1);
    const upright = [...halvingOrder(wide.graph, wide.points).slice(-10)];
    expect(new Set(upright.map((v) => v % 60)).size).toBe(1);
  });

  it('halves evenly: no subtree above a cut is much larger than its other half', () => {
    const { graph, points } = grid(40, 40, 1, 1);
    const order = [...halvingOrder(graph, points)];
    const cut = new Set(order.slice(-40));
    const before = order.slice(0, -40);
    const sides = [0, 1].map((side) => before.filter((v) => (v % 40 < 20 ? 0 : 1) === side || cut.has(v)).length);
    const [rows, columns] = [
      new Set([...cut].map((v) => Math.floor(v / 40))).size,
      new Set([...cut].map((v) => v % 40)).size,
    ];
    expect(Math.min(rows, columns)).toBe(1);
    expect(Math.abs(sides[0] - sides[1])).toBeLessThanOrEqual(40);
  });
});
