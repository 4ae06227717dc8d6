import { runAtOnce, type Stepwise } from '../base/stepwise.ts';
import { MinHeap } from '../base/min-heap.ts';
import { topologyOf } from './topology.ts';
import type { Mesh } from './mesh.ts';

/** Shortest distances along edges from a set of vertices. */
export interface EdgeDistance {
  /** Per vertex, in the unit of the weights; Infinity where no path leads. */
  readonly distance: Float64Array;
  /** Per vertex the edge it was reached by, or -1 for a source or an unreached vertex. */
  readonly viaEdge: Int32Array;
}

/** Vertices settled in one stretch: a few milliseconds. */
const STRETCH_VERTICES = 1 << 13;

/**
 * Dijkstra's shortest paths (1959) along mesh edges.
 * @param sources  vertices with distance 0.
 * @param weights  one per edge, >= 0; Infinity closes an edge.
 * @param target   stop as soon as this vertex is settled; -1 settles all.
 */
export function edgeDistances(
  mesh: Mesh,
  sources: readonly number[],
  weights: Float64Array,
  target = -1,
): EdgeDistance {
  return runAtOnce(edgeDistanceSteps(mesh, sources, weights, target));
}

/** The same in stretches. */
export function* edgeDistanceSteps(
  mesh: Mesh,
  sources: readonly number[],
  weights: Float64Array,
  target = -1,
): Stepwise<EdgeDistance> {
  const { edgeVertices } = topologyOf(mesh);
  const vertexCount = mesh.positions.length / 3;
  const { starts, edges } = edgesOfVertices(mesh);
  const distance = new Float64Array(vertexCount).fill(Infinity);
  const viaEdge = new Int32Array(vertexCount).fill(-1);
  const heap = new MinHeap();
  for (const v of sources) {
    distance[v] = 0;
    heap.push(0, v);
  }
  for (let settled = 0; heap.size > 0; settled += 1) {
    if (settled % STRETCH_VERTICES === 0) yield;
    const { key, item: v } = heap.pop();
    if (key > distance[v]) continue;
    if (v === target) break;
    for (let i = starts[v]; i < starts[v + 1]; i += 1) {
      const e = edges[i];
      const w = edgeVertices[2 * e] === v ? edgeVertices[2 * e + 1] : edgeVertices[2 * e];
      const reach = key + weights[e];
      if (reach < distance[w]) {
        distance[w] = reach;
        viaEdge[w] = e;
        heap.push(reach, w);
      }
    }
  }
  return { distance, viaEdge };
}

/** The vertices from a source to `target`, both included; empty where no path leads. */
export function pathTo(mesh: Mesh, found: EdgeDistance, target: number): number[] {
  if (found.distance[target] === Infinity) return [];
  const { edgeVertices } = topologyOf(mesh);
  const path = [target];
  for (let v = target; found.viaEdge[v] >= 0;) {
    const e = found.viaEdge[v];
    v = edgeVertices[2 * e] === v ? edgeVertices[2 * e + 1] : edgeVertices[2 * e];
    path.push(v);
  }
  return path.reverse();
}

/** For each vertex the edges at it: `edges[starts[v] .. starts[v + 1])`, ascending. */
export function edgesOfVertices(mesh: Mesh): { starts: Uint32Array; edges: Uint32Array } {
  const { edgeCount, edgeVertices } = topologyOf(mesh);
  const vertexCount = mesh.positions.length / 3;
  const starts = new Uint32Array(vertexCount + 1);
  for (const v of edgeVertices) starts[v + 1] += 1;
  for (let v = 0; v < vertexCount; v += 1) starts[v + 1] += starts[v];
  const fill = starts.slice();
  const edges = new Uint32Array(2 * edgeCount);
  for (let e = 0; e < edgeCount; e += 1) {
    edges[fill[edgeVertices[2 * e]]++] = e;
    edges[fill[edgeVertices[2 * e + 1]]++] = e;
  }
  return { starts, edges };
}
