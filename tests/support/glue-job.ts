import { runAtOnce } from '../../src/base/stepwise.ts';
import { topologyOf } from '../../src/mesh/topology.ts';
import { triangleArea } from '../../src/mesh/measure.ts';
import type { Mesh } from '../../src/mesh/mesh.ts';
import type { Patch } from '../../src/model/patch.ts';
import type { SeamChain } from '../../src/model/seams.ts';
import { cutPatches } from '../../src/steps/cut/cut-patches.ts';
import { seamChains } from '../../src/steps/cut/seam-chains.ts';
import { reachGraphSteps } from '../../src/steps/shop/reach-graph.ts';
import type { OrderJob } from '../../src/steps/shop/gluing-order.ts';
import { seamNet } from '../../src/steps/shop/seam-net.ts';

/** A mesh parted along some of its edges, ready to be ordered. */
export interface PartedMesh {
  readonly mesh: Mesh;
  readonly isSeam: Uint8Array;
  readonly patches: readonly Patch[];
  readonly chains: readonly SeamChain[];
  readonly job: OrderJob;
}

/** @param isCut for an edge by its two vertices and its number whether it is parted; open edges are no seams. */
export function partedMesh(mesh: Mesh, isCut: (v: number, w: number, edge: number) => boolean): PartedMesh {
  const topology = topologyOf(mesh);
  const isSeam = new Uint8Array(topology.edgeCount);
  for (let e = 0; e < topology.edgeCount; e += 1) {
    const isInner = topology.twin[topology.halfedgeOfEdge[e]] >= 0;
    if (isInner && isCut(topology.edgeVertices[2 * e], topology.edgeVertices[2 * e + 1], e)) isSeam[e] = 1;
  }
  const seams = { isSeam, count: isSeam.reduce((sum, one) => sum + one, 0) };
  const cut = cutPatches(mesh, seams, mesh.positions);
  const chains = seamChains(mesh, seams, cut, []);
  const { patches } = cut;
  const areaMm2 = patches.map(({ meshTriangles }) =>
    meshTriangles.reduce((sum, t) => sum + triangleArea(mesh.positions, mesh.triangles, t), 0),
  );
  const net = seamNet(chains, patches, mesh.positions);
  const graph = runAtOnce(reachGraphSteps(chains, patches, mesh.positions));
  return { mesh, isSeam, patches, chains, job: { net, graph, areaMm2 } };
}

/**
 * Areas grown from random triangles: the edges between them are a random set of seams.
 * @param count how many areas are begun.
 */
export function randomAreas(mesh: Mesh, rand: () => number, count: number): Int32Array {
  const { twin } = topologyOf(mesh);
  const triangles = mesh.triangles.length / 3;
  const areaOf = new Int32Array(triangles).fill(-1);
  const edge: { t: number; area: number }[] = [];
  for (let area = 0; area < count; area += 1) edge.push({ t: Math.floor(rand() * triangles), area });
  for (let left = triangles; left > 0;) {
    if (edge.length === 0) edge.push({ t: areaOf.indexOf(-1), area: 0 });
    // Any of them may grow next, so that borders are ragged as no maker would draw them.
    const [{ t, area }] = edge.splice(Math.floor(rand() * Math.min(edge.length, 2 * count)), 1);
    if (areaOf[t] >= 0) continue;
    areaOf[t] = area;
    left -= 1;
    for (let h = 3 * t; h < 3 * t + 3; h += 1) {
      const other = twin[h] < 0 ? -1 : Math.floor(twin[h] / 3);
      if (other >= 0 && areaOf[other] < 0) edge.push({ t: other, area });
    }
  }
  return areaOf;
}
