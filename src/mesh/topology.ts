import { runAtOnce, type Stepwise } from '../base/stepwise.ts';
import type { Mesh } from './mesh.ts';

/**
 * Who touches whom. Half-edge `h = 3 t + k` belongs to triangle `t = floor(h / 3)` and runs from its corner `k` to its corner `(k + 1) % 3`:
 *
 *            c2
 *           /  \            h = 3t     from c0 to c1
 *        h+2    h+1         h = 3t + 1 from c1 to c2
 *         /      \          h = 3t + 2 from c2 to c0
 *       c0 --h--> c1
 *
 * `twin` joins two half-edges only where exactly two triangles meet and run against each other; an edge of three triangles,
 * or of two that run the same way, is open on every side here and is reported by the checks.
 */
export interface Topology {
  readonly edgeCount: number;
  /** Two vertices per edge, the lower number first. */
  readonly edgeVertices: Uint32Array;
  readonly edgeOfHalfedge: Uint32Array;
  /** The half-edge across, or -1. */
  readonly twin: Int32Array;
  /** For each edge its first half-edge; the second, where the edge is proper, is `twin` of it. */
  readonly halfedgeOfEdge: Uint32Array;
  /** How many triangles touch each edge. */
  readonly usesOfEdge: Uint32Array;
  /** For each vertex one half-edge that leaves it: the first of its fan where the fan is open, else any; -1 for an unused vertex. */
  readonly halfedgeOfVertex: Int32Array;
  /** The edge between two vertices, or -1. */
  edgeBetween(v: number, w: number): number;
}

export const nextHalfedge = (h: number): number => (h % 3 === 2 ? h - 2 : h + 1);
export const prevHalfedge = (h: number): number => (h % 3 === 0 ? h + 2 : h - 1);
export const triangleOfHalfedge = (h: number): number => Math.floor(h / 3);
/** Vertex a half-edge leaves. */
export const originOf = (triangles: Uint32Array, h: number): number => triangles[h];
/** Vertex a half-edge arrives at. */
export const targetOf = (triangles: Uint32Array, h: number): number => triangles[nextHalfedge(h)];

/** Edges gathered in one stretch: a few milliseconds. */
const STRETCH_EDGES = 1 << 16;

const known = new WeakMap<Mesh, Topology>();

/** The topology of a mesh; built once for each mesh and kept as long as the mesh lives. */
export function topologyOf(mesh: Mesh): Topology {
  return known.get(mesh) ?? runAtOnce(topologySteps(mesh));
}

/** The same in stretches: whoever goes first pays for those who come after. */
export function* topologySteps(mesh: Mesh): Stepwise<Topology> {
  let topology = known.get(mesh);
  if (topology === undefined) {
    topology = yield* buildTopologySteps(mesh.triangles, mesh.positions.length / 3);
    known.set(mesh, topology);
  }
  return topology;
}

/**
 * Builds the topology of packed triangles. Edges are numbered by their lower, then their higher vertex, so the numbering does not
 * depend on the order of the triangles.
 * @param triangles   three vertex numbers per triangle, each below `vertexCount`.
 */
export function buildTopology(triangles: Uint32Array, vertexCount: number): Topology {
  return runAtOnce(buildTopologySteps(triangles, vertexCount));
}

/** The same in stretches. */
export function* buildTopologySteps(triangles: Uint32Array, vertexCount: number): Stepwise<Topology> {
  const halfedgeCount = triangles.length;
  const halfedgesByEdge = yield* sortSteps(triangles, vertexCount);
  yield;
  const edgeOfHalfedge = new Uint32Array(halfedgeCount);
  const edgeVertices = new Uint32Array(2 * halfedgeCount);
  const halfedgeOfEdge = new Uint32Array(halfedgeCount);
  const usesOfEdge = new Uint32Array(halfedgeCount);
  const twin = new Int32Array(halfedgeCount).fill(-1);
  let edgeCount = 0;
  for (let start = 0; start < halfedgeCount;) {
    const first = halfedgesByEdge[start];
    const low = lowOf(triangles, first);
    const high = highOf(triangles, first);
    let end = start + 1;
    while (end < halfedgeCount) {
      const h = halfedgesByEdge[end];
      if (lowOf(triangles, h) !== low || highOf(triangles, h) !== high) break;
      end += 1;
    }
    edgeVertices[2 * edgeCount] = low;
    edgeVertices[2 * edgeCount + 1] = high;
    halfedgeOfEdge[edgeCount] = first;
    usesOfEdge[edgeCount] = end - start;
    for (let i = start; i < end; i += 1) edgeOfHalfedge[halfedgesByEdge[i]] = edgeCount;
    if (end - start === 2) {
      const second = halfedgesByEdge[start + 1];
      if (triangles[first] !== triangles[second]) {
        twin[first] = second;
        twin[second] = first;
      }
    }
    edgeCount += 1;
    if (edgeCount % STRETCH_EDGES === 0) yield;
    start = end;
  }
  yield;
  const vertexStart = firstEdgeOfLowVertex(edgeVertices, edgeCount, vertexCount);
  return {
    edgeCount,
    edgeVertices: edgeVertices.slice(0, 2 * edgeCount),
    edgeOfHalfedge,
    twin,
    halfedgeOfEdge: halfedgeOfEdge.slice(0, edgeCount),
    usesOfEdge: usesOfEdge.slice(0, edgeCount),
    halfedgeOfVertex: leavingHalfedges(triangles, twin, vertexCount),
    edgeBetween(v, w) {
      const low = Math.min(v, w);
      const high = Math.max(v, w);
      if (!(low >= 0 && high < vertexCount)) return -1;
      let from = vertexStart[low];
      let to = vertexStart[low + 1];
      while (from < to) {
        const middle = (from + to) >> 1;
        if (edgeVertices[2 * middle + 1] < high) from = middle + 1;
        else to = middle;
      }
      return from < vertexStart[low + 1] && edgeVertices[2 * from + 1] === high ? from : -1;
    },
  };
}

const lowOf = (triangles: Uint32Array, h: number): number => Math.min(triangles[h], triangles[nextHalfedge(h)]);
const highOf = (triangles: Uint32Array, h: number): number => Math.max(triangles[h], triangles[nextHalfedge(h)]);

/** Half-edges ordered by low vertex, then high vertex, then their own number: two counting passes, linear in the mesh. */
function* sortSteps(triangles: Uint32Array, vertexCount: number): Stepwise<Uint32Array> {
  const count = triangles.length;
  const byHigh = countingOrder(
    count,
    vertexCount,
    (i) => i,
    (h) => highOf(triangles, h),
  );
  yield;
  return countingOrder(
    count,
    vertexCount,
    (i) => byHigh[i],
    (h) => lowOf(triangles, h),
  );
}

/** Stable order of `item(0..count)` by a key below `keyCount`. */
function countingOrder(
  count: number,
  keyCount: number,
  item: (i: number) => number,
  key: (h: number) => number,
): Uint32Array {
  const starts = new Uint32Array(keyCount + 1);
  for (let i = 0; i < count; i += 1) starts[key(item(i)) + 1] += 1;
  for (let k = 0; k < keyCount; k += 1) starts[k + 1] += starts[k];
  const order = new Uint32Array(count);
  for (let i = 0; i < count; i += 1) {
    const h = item(i);
    order[starts[key(h)]++] = h;
  }
  return order;
}

function firstEdgeOfLowVertex(edgeVertices: Uint32Array, edgeCount: number, vertexCount: number): Uint32Array {
  const starts = new Uint32Array(vertexCount + 1);
  for (let e = 0; e < edgeCount; e += 1) starts[edgeVertices[2 * e] + 1] += 1;
  for (let v = 0; v < vertexCount; v += 1) starts[v + 1] += starts[v];
  return starts;
}

function leavingHalfedges(triangles: Uint32Array, twin: Int32Array, vertexCount: number): Int32Array {
  const leaving = new Int32Array(vertexCount).fill(-1);
  for (let h = 0; h < triangles.length; h += 1) {
    const v = triangles[h];
    if (leaving[v] < 0 || twin[h] < 0) leaving[v] = h;
  }
  return leaving;
}
