import { DisjointSets } from '../../base/disjoint-sets.ts';
import { runAtOnce, type Stepwise } from '../../base/stepwise.ts';
import { edgeDistanceSteps, edgesOfVertices, pathTo } from '../../mesh/edge-distance.ts';
import { edgeLengths } from '../../mesh/edge-fold.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { topologyOf, triangleOfHalfedge } from '../../mesh/topology.ts';
import type { CutOffer, Patch } from '../../model/patch.ts';
import type { SeamSet } from '../../model/seams.ts';

/**
 * Offers the cut that turns a patch into a disc. A closed surface without handles is opened between its two points farthest apart; all
 * others by a cut graph: the shortest-path tree from the border, a spanning tree of the faces that never crosses it, and what is
 * left of the edges after pruning dead ends (tree and cotree, Erickson and Whittlesey, SODA 2005). Border edges cost nothing, so a
 * ring is cut across at a short place.
 * @returns null for a disc.
 */
export function offerCut(mesh: Mesh, seams: SeamSet, patches: readonly Patch[], index: number): CutOffer | null {
  return runAtOnce(offerSteps(mesh, seams, patches, index));
}

/** The same in stretches. */
export function* offerSteps(
  mesh: Mesh,
  seams: SeamSet,
  patches: readonly Patch[],
  index: number,
): Stepwise<CutOffer | null> {
  const patch = patches[index];
  if (patch.kind === 'disc') return null;
  const inside = edgesInside(mesh, seams, patch);
  yield;
  const lengths = edgeLengths(mesh);
  yield;
  const edges =
    patch.kind === 'closed' && patch.euler === 2
      ? yield* farthestPath(mesh, patch, inside, lengths)
      : yield* cutGraph(mesh, patch, inside, lengths);
  const { edgeVertices } = topologyOf(mesh);
  const lengthMm = edges.reduce((sum, e) => sum + lengths[e], 0);
  return {
    patch: index,
    edges: edges.map((e) => [edgeVertices[2 * e], edgeVertices[2 * e + 1]] as const),
    lengthMm,
    text: OFFER_TEXT[patch.kind],
  };
}

const OFFER_TEXT: Readonly<Record<Exclude<Patch['kind'], 'disc'>, string>> = {
  closed: 'part along the shortest line that opens it',
  handled: 'part round and along the handle',
  windowed: 'part from the hole to the edge',
};

/** Per edge of the mesh: 1 inside the patch (foam joined across), 2 on its border, 0 elsewhere. */
function edgesInside(mesh: Mesh, seams: SeamSet, patch: Patch): Uint8Array {
  const topology = topologyOf(mesh);
  const inside = new Uint8Array(topology.edgeCount);
  for (const t of patch.meshTriangles) {
    for (let h = 3 * t; h < 3 * t + 3; h += 1) {
      const edge = topology.edgeOfHalfedge[h];
      inside[edge] = topology.twin[h] >= 0 && seams.isSeam[edge] === 0 ? 1 : 2;
    }
  }
  return inside;
}

function* farthestPath(mesh: Mesh, patch: Patch, inside: Uint8Array, lengths: Float64Array): Stepwise<number[]> {
  const weights = lengths.map((length, e) => (inside[e] === 1 ? length : Infinity));
  const farthest = function* (from: number): Stepwise<number> {
    const { distance } = yield* edgeDistanceSteps(mesh, [from], weights);
    return patch.meshVertices.reduce(
      (best, v) => (distance[v] !== Infinity && distance[v] > distance[best] ? v : best),
      from,
    );
  };
  const start = yield* farthest(patch.meshVertices[0]);
  const end = yield* farthest(start);
  const path = pathTo(mesh, yield* edgeDistanceSteps(mesh, [start], weights), end);
  const topology = topologyOf(mesh);
  return path.slice(1).map((v, i) => topology.edgeBetween(path[i], v));
}

function* cutGraph(mesh: Mesh, patch: Patch, inside: Uint8Array, lengths: Float64Array): Stepwise<number[]> {
  const topology = topologyOf(mesh);
  const weights = lengths.map((length, e) => (inside[e] === 0 ? Infinity : inside[e] === 2 ? 0 : length));
  const border = patch.loops[0];
  const root = border === undefined ? patch.meshVertices[0] : patch.meshVertices[border[0]];
  const { distance, viaEdge } = yield* edgeDistanceSteps(mesh, [root], weights);
  const inTree = yield* treeOverBorders(mesh, patch, inside, distance, viaEdge);
  yield;
  const crossed = yield* crossedByFaceTree(mesh, patch, inside, inTree, distance, lengths);
  const isCut = new Uint8Array(topology.edgeCount);
  for (let e = 0; e < isCut.length; e += 1) if (inside[e] === 1 && crossed[e] === 0) isCut[e] = 1;
  yield;
  pruneDeadEnds(mesh, inside, isCut);
  return [...isCut.keys()].filter((e) => isCut[e] === 1);
}

/** Edges of the shortest-path tree, nearest first, that join what border edges and earlier ones have not joined yet: each border loop counts as one point. */
function* treeOverBorders(
  mesh: Mesh,
  patch: Patch,
  inside: Uint8Array,
  distance: Float64Array,
  viaEdge: Int32Array,
): Stepwise<Uint8Array> {
  const { edgeCount, edgeVertices } = topologyOf(mesh);
  const groups = new DisjointSets(mesh.positions.length / 3);
  for (let e = 0; e < edgeCount; e += 1) if (inside[e] === 2) groups.join(edgeVertices[2 * e], edgeVertices[2 * e + 1]);
  const inTree = new Uint8Array(edgeCount);
  yield;
  const order = [...new Set(patch.meshVertices)].sort((a, b) => distance[a] - distance[b] || a - b);
  yield;
  for (const v of order) {
    const e = viaEdge[v];
    if (e >= 0 && inside[e] === 1 && groups.join(edgeVertices[2 * e], edgeVertices[2 * e + 1])) inTree[e] = 1;
  }
  return inTree;
}

/** A spanning tree of the patch's faces over edges outside the tree of vertices, keeping those uncut that would close the longest loops. */
function* crossedByFaceTree(
  mesh: Mesh,
  patch: Patch,
  inside: Uint8Array,
  inTree: Uint8Array,
  distance: Float64Array,
  lengths: Float64Array,
): Stepwise<Uint8Array> {
  const topology = topologyOf(mesh);
  const candidates = new Uint32Array(inside.keys()).filter((e) => inside[e] === 1 && inTree[e] === 0);
  const loop = lengths.map(
    (length, e) => length + distance[topology.edgeVertices[2 * e]] + distance[topology.edgeVertices[2 * e + 1]],
  );
  yield;
  candidates.sort((a, b) => loop[b] - loop[a] || a - b);
  yield;
  const faces = new DisjointSets(mesh.triangles.length / 3);
  const crossed = new Uint8Array(topology.edgeCount);
  let left = patch.meshTriangles.length - 1;
  for (const e of candidates) {
    if (left === 0) break;
    const h = topology.halfedgeOfEdge[e];
    if (!faces.join(triangleOfHalfedge(h), triangleOfHalfedge(topology.twin[h]))) continue;
    crossed[e] = 1;
    left -= 1;
  }
  return crossed;
}

function pruneDeadEnds(mesh: Mesh, inside: Uint8Array, isCut: Uint8Array): void {
  const { edgeVertices } = topologyOf(mesh);
  const { starts, edges } = edgesOfVertices(mesh);
  const degree = new Int32Array(starts.length - 1);
  for (let e = 0; e < isCut.length; e += 1) {
    if (isCut[e] === 0 && inside[e] !== 2) continue;
    degree[edgeVertices[2 * e]] += 1;
    degree[edgeVertices[2 * e + 1]] += 1;
  }
  const ends = [...degree.keys()].filter((v) => degree[v] === 1);
  for (let v = ends.pop(); v !== undefined; v = ends.pop()) {
    for (let i = starts[v]; i < starts[v + 1]; i += 1) {
      const e = edges[i];
      if (isCut[e] === 0) continue;
      isCut[e] = 0;
      const w = edgeVertices[2 * e] === v ? edgeVertices[2 * e + 1] : edgeVertices[2 * e];
      degree[v] -= 1;
      degree[w] -= 1;
      if (degree[w] === 1) ends.push(w);
    }
  }
}
