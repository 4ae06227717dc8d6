import { MinHeap } from '../../base/min-heap.ts';
import { edgesOfVertices } from '../../mesh/edge-distance.ts';
import { edgeLengths } from '../../mesh/edge-fold.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { topologyOf } from '../../mesh/topology.ts';

/** What a search for seams may do with each edge of a sculpt, and what it costs. Edges and vertices go by their number in the mesh. */
export interface SeamGraph {
  readonly mesh: Mesh;
  readonly edgeCount: number;
  readonly vertexCount: number;
  /** Two vertices per edge. */
  readonly ends: Uint32Array;
  /** Edges at vertex v: `edges[starts[v] .. starts[v + 1])`. */
  readonly starts: Uint32Array;
  readonly edges: Uint32Array;
  /** mm. */
  readonly length: Float64Array;
  /** Length times weight, mm; Infinity where no seam may be added. */
  readonly cost: Float64Array;
  /** 1 for an edge of the prop, which is open already: it costs nothing and is never a seam. */
  readonly isOpen: Uint8Array;
  /** 1 for a vertex at such an edge. */
  readonly isRim: Uint8Array;
  /** 1 for an edge that is as it was at the start, whatever is proposed. */
  readonly isFixed: Uint8Array;
  /** The edge on the other side of the mirror, or -1: a change is made to both. Null where there is no mirror. */
  readonly mirror: Int32Array | null;
}

export interface GraphWishes {
  readonly positions: Float64Array;
  /** Per edge, >= 0; 1 is plain, Infinity closes it. */
  readonly weights?: Float64Array;
  /** 1 per edge that must stay as it is. */
  readonly locked?: Uint8Array;
  /** 1 per triangle of a piece that must stay as it is: no seam is added inside, none taken from its border. */
  readonly fixedTriangles?: Uint8Array;
  /** Per edge its partner, itself on the mirror line, or -1. */
  readonly mirror?: Int32Array;
}

export function seamGraph(mesh: Mesh, wishes: GraphWishes): SeamGraph {
  const { edgeCount, edgeVertices, twin, halfedgeOfEdge } = topologyOf(mesh);
  const length = edgeLengths(mesh, wishes.positions);
  const isOpen = new Uint8Array(edgeCount);
  const isFixed = new Uint8Array(edgeCount);
  const isRim = new Uint8Array(mesh.positions.length / 3);
  const cost = new Float64Array(edgeCount);
  for (let e = 0; e < edgeCount; e += 1) {
    const h = halfedgeOfEdge[e];
    if (twin[h] < 0) {
      isOpen[e] = 1;
      isRim[edgeVertices[2 * e]] = 1;
      isRim[edgeVertices[2 * e + 1]] = 1;
    } else if (wishes.fixedTriangles !== undefined) {
      const sides = [h, twin[h]].map((side) => wishes.fixedTriangles?.[Math.floor(side / 3)]);
      if (sides.includes(1)) isFixed[e] = 1;
    }
    if (wishes.locked?.[e] === 1) isFixed[e] = 1;
    cost[e] = length[e] * (wishes.weights?.[e] ?? 1);
    if (isOpen[e] === 1 || isFixed[e] === 1 || Number.isNaN(cost[e])) cost[e] = Infinity;
  }
  return {
    mesh,
    edgeCount,
    vertexCount: isRim.length,
    ends: edgeVertices,
    ...edgesOfVertices(mesh),
    length,
    cost,
    isOpen,
    isRim,
    isFixed,
    mirror: wishes.mirror ?? null,
  };
}

export const otherEnd = ({ ends }: SeamGraph, edge: number, v: number): number =>
  ends[2 * edge] === v ? ends[2 * edge + 1] : ends[2 * edge];

/** How many seams meet at each vertex. */
export function seamDegrees({ ends, vertexCount }: SeamGraph, isSeam: Uint8Array): Uint8Array {
  const degree = new Uint8Array(vertexCount);
  for (let e = 0; e < isSeam.length; e += 1) {
    if (isSeam[e] === 0) continue;
    degree[ends[2 * e]] += 1;
    degree[ends[2 * e + 1]] += 1;
  }
  return degree;
}

/** Vertices at which a seam ends inside the foam: tips of darts. */
export function dartTips(graph: SeamGraph, degree: Uint8Array): number[] {
  const tips: number[] = [];
  for (let v = 0; v < degree.length; v += 1) if (degree[v] === 1 && graph.isRim[v] === 0) tips.push(v);
  return tips;
}

/** Edges of a run of seam without a branch, and its vertices from end to end (one more than edges). */
export interface SeamRun {
  readonly edges: readonly number[];
  readonly vertices: readonly number[];
}

/** The run that leaves `from` along a seam edge, up to a branch, an edge of the prop, a tip, or back to where it began. */
export function runFrom(
  graph: SeamGraph,
  isSeam: Uint8Array,
  degree: Uint8Array,
  from: number,
  first: number,
): SeamRun {
  const edges = [first];
  const vertices = [from, otherEnd(graph, first, from)];
  for (;;) {
    const v = vertices[vertices.length - 1];
    if (v === from || degree[v] !== 2 || graph.isRim[v] === 1) break;
    const next = seamEdgesAt(graph, isSeam, v).find((e) => e !== edges[edges.length - 1]);
    if (next === undefined) break;
    edges.push(next);
    vertices.push(otherEnd(graph, next, v));
  }
  return { edges, vertices };
}

export function seamEdgesAt({ starts, edges }: SeamGraph, isSeam: Uint8Array, v: number): number[] {
  const found: number[] = [];
  for (let i = starts[v]; i < starts[v + 1]; i += 1) if (isSeam[edges[i]] === 1) found.push(edges[i]);
  return found;
}

/** All runs, each once, in the order of their lowest edge. */
export function seamRuns(graph: SeamGraph, isSeam: Uint8Array, degree: Uint8Array): SeamRun[] {
  const runs: SeamRun[] = [];
  const seen = new Uint8Array(isSeam.length);
  for (let e = 0; e < isSeam.length; e += 1) {
    if (isSeam[e] === 0 || seen[e] === 1) continue;
    const back = runFrom(graph, isSeam, degree, graph.ends[2 * e], e);
    const end = back.vertices[back.vertices.length - 1];
    const run = runFrom(graph, isSeam, degree, end, back.edges[back.edges.length - 1]);
    for (const each of run.edges) seen[each] = 1;
    runs.push(run);
  }
  return runs;
}

/** A way along edges that may become seams: from its target back to where the search began. */
export interface SeamWay {
  readonly edges: readonly number[];
  /** Target first. */
  readonly vertices: readonly number[];
  readonly cost: number;
}

/**
 * The cheapest way (Dijkstra 1959) from any source to a target that touches sources at its far end only, so that it never closes a loop
 * with what they stand on.
 * @param target    a vertex, or several of which one will do.
 * @param isSource  1 per vertex to begin from.
 * @param noise     per edge a factor on its cost, for ways that are not quite the cheapest.
 * @param isBarred  vertices no way may go through.
 * @returns null where no way leads, or a target is a source.
 */
export function cheapestWay(
  graph: SeamGraph,
  target: number | readonly number[],
  isSource: (v: number) => boolean,
  noise: Float64Array | null = null,
  isBarred: (v: number) => boolean = () => false,
): SeamWay | null {
  const { starts, edges, cost, vertexCount } = graph;
  const reach = new Float64Array(vertexCount).fill(Infinity);
  const via = new Int32Array(vertexCount).fill(-1);
  const heap = new MinHeap();
  for (const v of typeof target === 'number' ? [target] : target) {
    if (isSource(v)) return null;
    reach[v] = 0;
    heap.push(0, v);
  }
  while (heap.size > 0) {
    const { key, item: v } = heap.pop();
    if (key > reach[v]) continue;
    if (isSource(v)) return wayBack(graph, via, v, key);
    for (let i = starts[v]; i < starts[v + 1]; i += 1) {
      const e = edges[i];
      const next = key + (noise === null ? cost[e] : cost[e] * noise[e]);
      const w = otherEnd(graph, e, v);
      if (next >= reach[w] || isBarred(w)) continue;
      reach[w] = next;
      via[w] = e;
      heap.push(next, w);
    }
  }
  return null;
}

function wayBack(graph: SeamGraph, via: Int32Array, from: number, cost: number): SeamWay {
  const edges: number[] = [];
  const vertices = [from];
  for (let v = from; via[v] >= 0;) {
    const e = via[v];
    edges.push(e);
    v = otherEnd(graph, e, v);
    vertices.push(v);
  }
  return { edges: edges.reverse(), vertices: vertices.reverse(), cost };
}

/** Takes seams away and adds others, on both sides of the mirror. Fixed and open edges stay as they are. */
export function changeSeams(
  graph: SeamGraph,
  isSeam: Uint8Array,
  taken: readonly number[],
  added: readonly number[],
): Uint8Array {
  const next = isSeam.slice();
  const put = (e: number, value: 0 | 1): void => {
    for (const edge of [e, graph.mirror?.[e] ?? -1]) {
      if (edge < 0 || graph.isFixed[edge] === 1 || graph.isOpen[edge] === 1) continue;
      if (value === 0 || graph.cost[edge] < Infinity) next[edge] = value;
    }
  };
  for (const e of taken) put(e, 0);
  for (const e of added) put(e, 1);
  return next;
}

/** Turns up to this, radians, are followed by eye: 30 degrees. */
const SMOOTH_TURN = Math.PI / 6;

/** How much seams turn at their inner vertices beyond {@link SMOOTH_TURN} each, in right angles, all together. */
export function seamTurns({ ends, vertexCount }: SeamGraph, p: Float64Array, isSeam: Uint8Array): number {
  const before = new Int32Array(vertexCount).fill(-1);
  const after = new Int32Array(vertexCount).fill(-1);
  const degree = new Uint8Array(vertexCount);
  for (let e = 0; e < isSeam.length; e += 1) {
    if (isSeam[e] === 0) continue;
    const [v, w] = [ends[2 * e], ends[2 * e + 1]];
    for (const [from, to] of [
      [v, w],
      [w, v],
    ]) {
      if (degree[from] === 0) before[from] = to;
      else after[from] = to;
      degree[from] += 1;
    }
  }
  let sum = 0;
  for (let v = 0; v < vertexCount; v += 1) {
    if (degree[v] !== 2) continue;
    let [dot, aa, bb] = [0, 0, 0];
    for (let i = 0; i < 3; i += 1) {
      const [x, y] = [p[3 * v + i] - p[3 * before[v] + i], p[3 * after[v] + i] - p[3 * v + i]];
      dot += x * y;
      aa += x * x;
      bb += y * y;
    }
    if (!(aa > 0 && bb > 0)) continue;
    sum += Math.max(0, Math.acos(Math.min(1, Math.max(-1, dot / Math.sqrt(aa * bb)))) - SMOOTH_TURN);
  }
  return sum / (Math.PI / 2);
}
