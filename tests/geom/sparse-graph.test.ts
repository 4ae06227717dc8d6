import { describe, expect, it } from 'vitest';
import { graphOfPairs, graphOfTriangles, type SparseGraph } from '../../src/geom/sparse-graph.ts';
import { eliminationTree, invert, postorder } from '../../src/geom/sparse-tree.ts';

const lists = ({ size, starts, neighbours }: SparseGraph): number[][] =>
  Array.from({ length: size }, (_, v) => [...neighbours.slice(starts[v], starts[v + 1])]);

describe('graphs of what meets', () => {
  it('name each neighbour once, ascending, at both ends, and no node with itself', () => {
    const graph = graphOfPairs(6, [4, 1, 1, 4, 0, 5, 4, 0, 3, 3, 4, 1, 5, 4]);
    expect(lists(graph)).toEqual([[4, 5], [4], [], [], [0, 1, 5], [0, 4]]);
    expect(graph.starts).toHaveLength(7);
    expect(graph.neighbours).toHaveLength(8);
    expect(lists(graphOfPairs(0, []))).toEqual([]);
    expect(lists(graphOfPairs(2, []))).toEqual([[], []]);
  });

  it('join the three corners of each triangle', () => {
    expect(lists(graphOfTriangles(5, [3, 0, 4, 0, 3, 1]))).toEqual([[1, 3, 4], [0, 3], [], [0, 1, 4], [0, 3]]);
  });
});

describe('trees of elimination', () => {
  it('number children before parents, subtrees in one run', () => {
    //      5
    //    /   \
    //   1     4      and 3 by itself with 2 under it
    //   |
    //   0
    expect([...postorder(Int32Array.of(1, 5, 3, -1, 5, -1))]).toEqual([2, 3, 0, 1, 4, 5]);
    expect([...postorder(Int32Array.of(-1, -1))]).toEqual([0, 1]);
    expect([...postorder(new Int32Array())]).toEqual([]);
    expect([...invert(Int32Array.of(2, 0, 3, 1))]).toEqual([1, 3, 0, 2]);
  });

  it('of a ring of six in turn has a chain and the fill of closing it', () => {
    const graph = graphOfPairs(6, [0, 1, 1, 2, 2, 3, 3, 4, 4, 5, 5, 0]);
    const tree = eliminationTree(graph, Int32Array.of(0, 1, 2, 3, 4, 5));
    expect([...tree.order]).toEqual([0, 1, 2, 3, 4, 5]);
    expect([...tree.parent]).toEqual([1, 2, 3, 4, 5, -1]);
    expect([...tree.below]).toEqual([2, 2, 2, 2, 1, 0]);
  });

  it('of every second one first has two under each', () => {
    const graph = graphOfPairs(4, [0, 2, 1, 2, 2, 3]);
    const tree = eliminationTree(graph, Int32Array.of(1, 3, 0, 2));
    expect([...tree.order]).toEqual([1, 3, 0, 2]);
    expect([...tree.place]).toEqual([2, 0, 3, 1]);
    expect([...tree.parent]).toEqual([3, 3, 3, -1]);
    expect([...tree.below]).toEqual([1, 1, 1, 0]);
  });
});
