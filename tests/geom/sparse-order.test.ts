import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random.ts';
import { graphOfPairs, graphOfTriangles, type SparseGraph } from '../../src/geom/sparse-graph.ts';
import { halvingOrder } from '../../src/geom/sparse-halving.ts';
import { minimumDegreeOrder } from '../../src/geom/sparse-min-degree.ts';
import { eliminationTree } from '../../src/geom/sparse-tree.ts';
import { gridPairs } from './sparse-support.ts';

/** Nodes of a square grid, row by row; any other graph gets points that say nothing about it. */
function pointsOf(size: number): Float64Array {
  const side = Math.round(Math.sqrt(size));
  return Float64Array.from(
    { length: 3 * size },
    (_, i) => [Math.floor(i / 3) % side, Math.floor(i / 3 / side), 0][i % 3],
  );
}

const ORDERS = [
  ['minimum degree', minimumDegreeOrder],
  ['halving', (graph: SparseGraph) => halvingOrder(graph, pointsOf(graph.size))],
] as const;

const fillOf = (graph: SparseGraph, order: Int32Array): number =>
  eliminationTree(graph, order).below.reduce((sum, count) => sum + count, 0);

/** Entries below the diagonal of the factor by playing the elimination with sets: slow and sure. */
function fillBySets(graph: SparseGraph, order: Int32Array): number {
  const sets = Array.from(
    { length: graph.size },
    (_, v) => new Set(graph.neighbours.slice(graph.starts[v], graph.starts[v + 1])),
  );
  let fill = 0;
  for (const v of order) {
    const around = [...sets[v]];
    fill += around.length;
    for (const w of around) {
      sets[w].delete(v);
      for (const u of around) if (u !== w) sets[w].add(u);
    }
  }
  return fill;
}

describe('sparse graphs', () => {
  it('hold each neighbour once, ascending, whatever was given twice or turned round', () => {
    const graph = graphOfPairs(4, [2, 0, 0, 2, 1, 1, 3, 0, 0, 1]);
    expect([...graph.starts]).toEqual([0, 3, 4, 5, 6]);
    expect([...graph.neighbours]).toEqual([1, 2, 3, 0, 0, 0]);
    expect(graphOfTriangles(4, [0, 1, 2, 2, 1, 3]).neighbours.length).toBe(10);
  });
});

describe.each(ORDERS)('%s', (_, orderOf) => {
  it('names every node once, on graphs in pieces, without edges, with all edges, and with random ones', () => {
    const rand = seededRandom(4);
    const graphs = [graphOfPairs(0, []), graphOfPairs(1, []), graphOfPairs(300, []), graphOfPairs(800, gridPairs(20))];
    const full = Array.from({ length: 40 }, (_, v) => Array.from({ length: v }, (_, w) => [v, w]).flat()).flat();
    graphs.push(graphOfPairs(40, full));
    for (let trial = 0; trial < 80; trial += 1) {
      const size = 1 + Math.floor(400 * rand());
      graphs.push(
        graphOfPairs(
          size,
          Array.from({ length: 2 * Math.floor(3 * size * rand()) }, () => Math.floor(size * rand())),
        ),
      );
    }
    for (const graph of graphs) {
      const order = orderOf(graph);
      expect(Array.from(order.slice().sort())).toEqual(Array.from({ length: graph.size }, (_, i) => i));
    }
  });

  it('keeps the factor of a grid thin', () => {
    const graph = graphOfPairs(3600, gridPairs(60));
    const natural = Int32Array.from({ length: 3600 }, (_, i) => i);
    expect(fillOf(graph, orderOf(graph))).toBeLessThan(0.45 * fillOf(graph, natural));
  });
});

describe('halving', () => {
  it('puts nodes without a point last, and takes nodes that all lie in one point', () => {
    const graph = graphOfPairs(3601, [...gridPairs(60), ...Array.from({ length: 3600 }, (_, v) => [v, 3600]).flat()]);
    const order = halvingOrder(graph, pointsOf(3600));
    expect(order[3600]).toBe(3600);
    expect(fillOf(graph, order)).toBeLessThan(3600 + 1.05 * fillOf(graph, minimumDegreeOrder(graph)));
    expect(new Set(halvingOrder(graph, new Float64Array(3 * 3601))).size).toBe(3601);
  });

  it('keeps the factor of a large grid thinner than minimum degree does', () => {
    const graph = graphOfPairs(14_400, gridPairs(120));
    expect(fillOf(graph, halvingOrder(graph, pointsOf(14_400)))).toBeLessThan(fillOf(graph, minimumDegreeOrder(graph)));
  });
});

describe('eliminationTree', () => {
  it('foresees the fill that elimination with sets finds', () => {
    const rand = seededRandom(12);
    for (let trial = 0; trial < 40; trial += 1) {
      const size = 2 + Math.floor(30 * rand());
      const graph = graphOfPairs(
        size,
        Array.from({ length: 4 * size }, () => Math.floor(size * rand())),
      );
      const order = Int32Array.from({ length: size }, (_, i) => i).sort(
        (a, b) => Math.sin(a + trial) - Math.sin(b + trial),
      );
      expect(fillOf(graph, order)).toBe(fillBySets(graph, order));
    }
  });

  it('puts parents after children and every subtree in one run', () => {
    const graph = graphOfPairs(400, gridPairs(20));
    const { parent } = eliminationTree(graph, minimumDegreeOrder(graph));
    const first = Int32Array.from({ length: 400 }, (_, k) => k);
    for (let k = 0; k < 400; k += 1) if (parent[k] >= 0) first[parent[k]] = Math.min(first[parent[k]], first[k]);
    const size = new Int32Array(400).fill(1);
    for (let k = 0; k < 400; k += 1) {
      if (parent[k] < 0) continue;
      expect(parent[k]).toBeGreaterThan(k);
      size[parent[k]] += size[k];
    }
    for (let k = 0; k < 400; k += 1) expect(k - first[k] + 1).toBe(size[k]);
  });
});
