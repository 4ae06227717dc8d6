import { describe, expect, it } from 'vitest';
import { topologyOf } from '../../../src/mesh/topology.ts';
import { coneTree } from '../../../src/steps/seams/cone-tree.ts';
import { edgesBetweenAreas, nearlyFlatAreas } from '../../../src/steps/seams/propose-clusters.ts';
import {
  changeSeams,
  cheapestWay,
  dartTips,
  seamDegrees,
  seamGraph,
  seamRuns,
  seamTurns,
} from '../../../src/steps/seams/propose-graph.ts';
import { forAll } from '../../support/for-all.ts';
import { boxMesh, meshOf } from '../../support/meshes.ts';

/** Squares of 1 mm, `n` by `n`, corner numbers x + (n + 1) y. */
function plate(n: number) {
  const at = (x: number, y: number): number => x + (n + 1) * y;
  const cells = Array.from({ length: n * n }, (_, i) => [i % n, Math.floor(i / n)] as const);
  return meshOf(
    Array.from({ length: (n + 1) ** 2 }, (_, i) => [i % (n + 1), Math.floor(i / (n + 1)), 0] as const),
    cells.map(([x, y]) => [at(x, y), at(x + 1, y), at(x + 1, y + 1), at(x, y + 1)]),
  );
}

const graphOf = (mesh: ReturnType<typeof plate>, wishes: Partial<Parameters<typeof seamGraph>[1]> = {}) =>
  seamGraph(mesh, { positions: mesh.positions, ...wishes });

const edgesAt = (mesh: ReturnType<typeof plate>, row: readonly number[]): number[] =>
  row.slice(1).map((v, i) => topologyOf(mesh).edgeBetween(row[i], v));

describe('the graph of seams', () => {
  it('never makes a seam of an edge of the prop, nor changes what is fixed, and does both sides of a mirror', () => {
    const mesh = boxMesh(1);
    const topology = topologyOf(mesh);
    const mirror = Int32Array.from({ length: topology.edgeCount }, (_, e) =>
      topology.edgeBetween(topology.edgeVertices[2 * e] ^ 1, topology.edgeVertices[2 * e + 1] ^ 1),
    );
    const [left, right] = [topology.edgeBetween(0, 2), topology.edgeBetween(1, 3)];
    const locked = new Uint8Array(topology.edgeCount);
    locked[topology.edgeBetween(4, 6)] = 1;
    const graph = graphOf(mesh, { mirror, locked });
    const none = new Uint8Array(topology.edgeCount);
    const both = changeSeams(graph, none, [], [left]);
    expect([...both.keys()].filter((e) => both[e] === 1)).toEqual([left, right].sort((a, b) => a - b));
    expect(changeSeams(graph, both, [right], [])).toEqual(none);
    expect(changeSeams(graph, none, [], [topology.edgeBetween(4, 6)])[topology.edgeBetween(4, 6)]).toBe(0);
    const flat = plate(2);
    const open = topologyOf(flat).edgeBetween(0, 1);
    expect(changeSeams(graphOf(flat), new Uint8Array(topologyOf(flat).edgeCount), [], [open])[open]).toBe(0);
  });

  it('finds runs between branches, tips and edges, each once, together every seam', () => {
    const mesh = plate(4);
    const graph = graphOf(mesh);
    // A T: down the middle from the upper edge, and an arm that ends inside.
    const stem = edgesAt(mesh, [22, 17, 12, 7, 2]);
    const arm = edgesAt(mesh, [12, 13]);
    const isSeam = changeSeams(graph, new Uint8Array(graph.edgeCount), [], [...stem, ...arm]);
    const degree = seamDegrees(graph, isSeam);
    expect(dartTips(graph, degree)).toEqual([13]);
    const runs = seamRuns(graph, isSeam, degree);
    expect(runs.map(({ edges }) => edges.length).sort()).toEqual([1, 2, 2]);
    expect(runs.flatMap(({ edges }) => edges).sort((a, b) => a - b)).toEqual([...stem, ...arm].sort((a, b) => a - b));
    for (const { edges, vertices } of runs) expect(edgesAt(mesh, vertices)).toEqual(edges);
  });

  it('finds a run that closes in itself', () => {
    const mesh = boxMesh(1);
    const graph = graphOf(mesh);
    const ring = edgesAt(mesh, [0, 1, 3, 2, 0]);
    const isSeam = changeSeams(graph, new Uint8Array(graph.edgeCount), [], ring);
    const runs = seamRuns(graph, isSeam, seamDegrees(graph, isSeam));
    expect(runs).toHaveLength(1);
    expect([...runs[0].edges].sort((a, b) => a - b)).toEqual([...ring].sort((a, b) => a - b));
  });

  it('goes the cheapest way, as trying every way would', () =>
    forAll(
      (random) => ({ weights: Array.from({ length: 40 }, () => 0.2 + random()), target: 5 + Math.floor(4 * random()) }),
      ({ weights, target }) => {
        const mesh = plate(3);
        const graph = graphOf(mesh, { weights: Float64Array.from(weights).subarray(0, topologyOf(mesh).edgeCount) });
        const way = cheapestWay(graph, target, (v) => graph.isRim[v] === 1);
        // Bellman and Ford, over and over.
        const reach = new Float64Array(graph.vertexCount).map((_, v) => (graph.isRim[v] === 1 ? 0 : Infinity));
        for (let round = 0; round < graph.vertexCount; round += 1) {
          for (let e = 0; e < graph.edgeCount; e += 1) {
            const [v, w] = [graph.ends[2 * e], graph.ends[2 * e + 1]];
            reach[v] = Math.min(reach[v], reach[w] + graph.cost[e]);
            reach[w] = Math.min(reach[w], reach[v] + graph.cost[e]);
          }
        }
        if (graph.isRim[target] === 1) expect(way).toBeNull();
        else expect(way?.cost).toBeCloseTo(reach[target], 12);
      },
    ));

  it('counts turns beyond thirty degrees in right angles', () => {
    const mesh = plate(3);
    const graph = graphOf(mesh);
    const none = new Uint8Array(graph.edgeCount);
    const straight = changeSeams(graph, none, [], edgesAt(mesh, [4, 5, 6]));
    expect(seamTurns(graph, mesh.positions, straight)).toBe(0);
    const bent = changeSeams(graph, none, [], edgesAt(mesh, [5, 6, 10]));
    expect(seamTurns(graph, mesh.positions, bent)).toBeCloseTo(60 / 90, 12);
  });
});

describe('a tree over sharp corners', () => {
  it('joins the eight corners of a box by seven edges', () => {
    const mesh = boxMesh(10, 20, 30);
    const graph = graphOf(mesh);
    const tree = coneTree(graph, mesh.positions, new Uint8Array(graph.edgeCount));
    const edges = [...(tree ?? []).keys()].filter((e) => tree?.[e] === 1);
    expect(edges).toHaveLength(7);
    // The shortest spanning tree: all four of 10, two of 20, one of 30.
    expect(edges.reduce((sum, e) => sum + graph.length[e], 0)).toBeCloseTo(4 * 10 + 2 * 20 + 30, 9);
  });

  it('is none on a flat plate, and none where all corners are reached', () => {
    const mesh = plate(3);
    expect(coneTree(graphOf(mesh), mesh.positions, new Uint8Array(topologyOf(mesh).edgeCount))).toBeNull();
    const box = boxMesh(1);
    const graph = graphOf(box);
    expect(coneTree(graph, box.positions, new Uint8Array(graph.edgeCount).fill(1))).toBeNull();
  });
});

describe('nearly flat areas', () => {
  it('are the six sides of a box, whatever the number of its faces', () => {
    const mesh = boxMesh(10, 20, 30);
    const graph = graphOf(mesh);
    const areas = nearlyFlatAreas(graph, mesh.positions, new Uint8Array(graph.edgeCount), 6);
    expect(new Set(areas).size).toBe(6);
    const between = edgesBetweenAreas(graph, areas);
    expect(between).toHaveLength(12);
  });

  it('stop at seams there are', () => {
    const mesh = plate(4);
    const graph = graphOf(mesh);
    const line = edgesAt(mesh, [2, 7, 12, 17, 22]);
    const isSeam = changeSeams(graph, new Uint8Array(graph.edgeCount), [], line);
    const areas = nearlyFlatAreas(graph, mesh.positions, isSeam, 1);
    expect(edgesBetweenAreas(graph, areas).sort((a, b) => a - b)).toEqual([...line].sort((a, b) => a - b));
  });
});
