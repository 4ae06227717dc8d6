import { runWithPauses } from '../../base/stepwise.ts';
import type { Work } from '../../base/work.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { topologyOf, triangleOfHalfedge } from '../../mesh/topology.ts';
import { simplifySteps } from '../../mesh/simplify/simplify.ts';
import {
  changeSeams,
  cheapestWay,
  seamDegrees,
  seamGraph,
  seamRuns,
  type SeamGraph,
} from '../../steps/seams/propose-graph.ts';
import type { ProposalWish } from './proposal.ts';

/** Triangles of the simpler surface. */
const ROUGH_TRIANGLES = 1200;
/** Share of the limits that seams on the simpler surface keep: what it has lost of the sculpt needs the rest. */
const ROUGH_SHARE = 0.7;

/** A simpler surface to look for seams on. */
export interface RoughSculpt {
  readonly wish: ProposalWish;
  /** Vertex of the sculpt that each of its vertices is. */
  readonly vertexOf: Uint32Array;
}

/** True where nothing is held: seams found elsewhere may then be laid on the sculpt as they are. */
export function isFree({ start, locked, fixedTriangles, mirror }: ProposalWish): boolean {
  const has = (list: Uint8Array | undefined): boolean => list?.includes(1) === true;
  return mirror === undefined && !has(start?.isSeam) && !has(locked) && !has(fixedTriangles);
}

/**
 * The same surface with far fewer triangles, every vertex of which is one of the sculpt's (quadric error metric, Garland and Heckbert
 * 1997). What a seam costs at its vertices is the mean of what it costs round them on the sculpt.
 */
export async function roughSculpt(wish: ProposalWish, work: Work): Promise<RoughSculpt> {
  const { mesh, positions, limits, dial, seed } = wish;
  const count = mesh.positions.length / 3;
  const steps = simplifySteps(mesh, {
    triangles: ROUGH_TRIANGLES,
    offMm: Infinity,
    isKept: new Uint8Array(count),
    partner: null,
  });
  const { corners } = await runWithPauses(steps, () => work.pause(0));
  const vertexOf = Uint32Array.from(new Set(corners)).sort();
  const numberOf = new Map(Array.from(vertexOf, (v, i) => [v, i]));
  const triangles = Uint32Array.from(corners, (v) => numberOf.get(v) ?? 0);
  const at = (p: Float64Array): Float64Array => Float64Array.from(triples(vertexOf), (i) => p[i]);
  const rough: Mesh = {
    positions: at(mesh.positions),
    triangles,
    faceOfTriangle: Uint32Array.from({ length: triangles.length / 3 }, (_, t) => t),
    faceCount: triangles.length / 3,
    fileVertex: Uint32Array.from(vertexOf.keys()),
    vertexOfFile: Int32Array.from(vertexOf.keys()),
    groupNames: [],
    groupOfFace: new Int32Array(triangles.length / 3).fill(-1),
  };
  const { bend: _, ...others } = limits;
  const tighter = {
    ...others,
    stretchPct: ROUGH_SHARE * limits.stretchPct,
    squashPct: ROUGH_SHARE * limits.squashPct,
  };
  const weights = roughWeights(wish, rough, vertexOf);
  return { wish: { mesh: rough, positions: at(positions), limits: tighter, dial, seed, ...weights }, vertexOf };
}

function* triples(vertices: Uint32Array): Iterable<number> {
  for (const v of vertices) yield* [3 * v, 3 * v + 1, 3 * v + 2];
}

function roughWeights(
  { mesh, weights }: ProposalWish,
  rough: Mesh,
  vertexOf: Uint32Array,
): { readonly weights?: Float64Array } {
  if (weights === undefined) return {};
  const { starts, edges } = seamGraph(mesh, { positions: mesh.positions });
  const meanAt = Float64Array.from(vertexOf, (v) => {
    const beside = edges.subarray(starts[v], starts[v + 1]);
    return beside.reduce((sum, e) => sum + weights[e], 0) / beside.length;
  });
  const { ends, edgeCount } = seamGraph(rough, { positions: rough.positions });
  return {
    weights: Float64Array.from({ length: edgeCount }, (_, e) => (meanAt[ends[2 * e]] + meanAt[ends[2 * e + 1]]) / 2),
  };
}

/**
 * Seams of the simpler surface laid on the sculpt: each of its edges becomes the cheapest way between its two ends that touches no other.
 * @returns null where there is no such way for one of them.
 */
export function laidOnSculpt(
  graph: SeamGraph,
  rough: SeamGraph,
  vertexOf: Uint32Array,
  isSeam: Uint8Array,
): Uint8Array | null {
  const degree = seamDegrees(rough, isSeam);
  const isTaken = new Uint8Array(graph.vertexCount);
  degree.forEach((count, v) => {
    if (count > 0) isTaken[vertexOf[v]] = 1;
  });
  const added: number[] = [];
  for (const { vertices } of seamRuns(rough, isSeam, degree)) {
    for (let i = 1; i < vertices.length; i += 1) {
      const [from, to] = [vertexOf[vertices[i - 1]], vertexOf[vertices[i]]];
      const isBarred = (v: number): boolean => v !== from && (isTaken[v] === 1 || graph.isRim[v] === 1);
      const isThere = (v: number): boolean => v === from;
      // Where no way keeps off all others, one that touches them is better than none.
      const way = cheapestWay(graph, to, isThere, null, isBarred) ?? cheapestWay(graph, to, isThere);
      if (way === null) return null;
      for (const v of way.vertices) isTaken[v] = 1;
      added.push(...way.edges);
    }
  }
  return withoutScraps(graph, changeSeams(graph, new Uint8Array(graph.edgeCount), [], added));
}

/** Share of the triangles under which what two ways shut in between them is a scrap. */
const SCRAP_SHARE = 0.002;

/** Scraps are made one with the neighbour they share most seam with. */
function withoutScraps(graph: SeamGraph, isSeam: Uint8Array): Uint8Array {
  const { halfedgeOfEdge, twin } = topologyOf(graph.mesh);
  const triangles = graph.mesh.triangles.length / 3;
  const areaOf = joinedTriangles(graph, isSeam);
  const sizes = new Uint32Array(triangles);
  for (const area of areaOf) sizes[area] += 1;
  const shared = new Map<number, Map<number, number[]>>();
  for (let e = 0; e < isSeam.length; e += 1) {
    if (isSeam[e] === 0) continue;
    const [a, b] = [halfedgeOfEdge[e], twin[halfedgeOfEdge[e]]].map((h) => areaOf[triangleOfHalfedge(h)]);
    for (const [scrap, other] of [
      [a, b],
      [b, a],
    ]) {
      if (scrap === other || sizes[scrap] > SCRAP_SHARE * triangles) continue;
      const beside = shared.get(scrap) ?? new Map<number, number[]>();
      beside.set(other, [...(beside.get(other) ?? []), e]);
      shared.set(scrap, beside);
    }
  }
  const lengthOf = (edges: readonly number[]): number => edges.reduce((sum, e) => sum + graph.length[e], 0);
  const taken = [...shared.values()].flatMap(
    (beside) => [...beside.values()].sort((x, y) => lengthOf(y) - lengthOf(x))[0],
  );
  return changeSeams(graph, isSeam, taken, []);
}

/** For each triangle the lowest one it hangs together with. */
function joinedTriangles({ mesh }: SeamGraph, isSeam: Uint8Array): Int32Array {
  const { edgeOfHalfedge, twin } = topologyOf(mesh);
  const areaOf = new Int32Array(mesh.triangles.length / 3).fill(-1);
  for (let first = 0; first < areaOf.length; first += 1) {
    if (areaOf[first] >= 0) continue;
    areaOf[first] = first;
    const open = [first];
    for (let t = open.pop(); t !== undefined; t = open.pop()) {
      for (let h = 3 * t; h < 3 * t + 3; h += 1) {
        const next = twin[h] < 0 || isSeam[edgeOfHalfedge[h]] === 1 ? -1 : triangleOfHalfedge(twin[h]);
        if (next < 0 || areaOf[next] >= 0) continue;
        areaOf[next] = first;
        open.push(next);
      }
    }
  }
  return areaOf;
}
