import type { Mesh } from '../../../src/mesh/mesh.ts';
import { topologyOf, triangleOfHalfedge } from '../../../src/mesh/topology.ts';
import type { Patch } from '../../../src/model/patch.ts';
import { cutPatches } from '../../../src/steps/cut/cut-patches.ts';

type Edge = readonly [number, number];

/** The patches of a mesh parted where the labels of two triangles differ, and along the given edges. */
export function partedBy(mesh: Mesh, labels: Uint8Array, edges: readonly Edge[] = []): readonly Patch[] {
  const { edgeCount, edgeOfHalfedge, twin, edgeBetween } = topologyOf(mesh);
  const isSeam = new Uint8Array(edgeCount);
  for (const [v, w] of edges) isSeam[edgeBetween(v, w)] = 1;
  for (let h = 0; h < twin.length; h += 1) {
    if (twin[h] < 0 || labels[triangleOfHalfedge(h)] === labels[triangleOfHalfedge(twin[h])]) continue;
    isSeam[edgeOfHalfedge[h]] = 1;
  }
  const count = isSeam.reduce((sum, is) => sum + is, 0);
  return cutPatches(mesh, { isSeam, count }, mesh.positions).patches;
}

/** Label 1 for every triangle whose middle has x above `beyond`, else 0. */
export function halves(mesh: Mesh, beyond: number): Uint8Array {
  return Uint8Array.from({ length: mesh.triangles.length / 3 }, (_, t) => {
    const x = [0, 1, 2].reduce((sum, k) => sum + mesh.positions[3 * mesh.triangles[3 * t + k]] / 3, 0);
    return x > beyond ? 1 : 0;
  });
}

/** Gives up to `count` triangles, in one piece beside the seam, the label on the other side of it. */
export function movedSeam(mesh: Mesh, labels: Uint8Array, count: number, rand: () => number): Uint8Array {
  const { twin } = topologyOf(mesh);
  const isAtSeam = (h: number): boolean =>
    twin[h] >= 0 && labels[triangleOfHalfedge(h)] !== labels[triangleOfHalfedge(twin[h])];
  const atSeam = Array.from(twin.keys()).filter(isAtSeam);
  const moved = labels.slice();
  if (atSeam.length === 0) return moved;
  const queue = [triangleOfHalfedge(atSeam[Math.floor(rand() * atSeam.length)])];
  const from = labels[queue[0]];
  for (let k = 0; k < queue.length && k < count; k += 1) {
    moved[queue[k]] = 1 - from;
    for (let h = 3 * queue[k]; h < 3 * queue[k] + 3; h += 1) {
      const beside = twin[h] < 0 ? -1 : triangleOfHalfedge(twin[h]);
      if (beside >= 0 && labels[beside] === from && !queue.includes(beside)) queue.push(beside);
    }
  }
  return moved;
}

/** A way of up to `length` edges from a border vertex of the mesh into it, as straight as random steps go. */
export function dart(mesh: Mesh, length: number, rand: () => number): Edge[] {
  const { twin, edgeVertices, edgeCount, halfedgeOfEdge } = topologyOf(mesh);
  const around = new Map<number, number[]>();
  const onBorder = new Set<number>();
  for (let e = 0; e < edgeCount; e += 1) {
    const [v, w] = [edgeVertices[2 * e], edgeVertices[2 * e + 1]];
    for (const [a, b] of [
      [v, w],
      [w, v],
    ]) {
      around.set(a, [...(around.get(a) ?? []), b]);
    }
    if (twin[halfedgeOfEdge[e]] < 0) [v, w].forEach((end) => onBorder.add(end));
  }
  const starts = [...onBorder].sort((a, b) => a - b);
  const way = [starts[Math.floor(rand() * starts.length)]];
  const height = (v: number): number => mesh.positions[3 * v + 2];
  while (way.length <= length) {
    const now = way[way.length - 1];
    const next = (around.get(now) ?? []).filter((v) => !onBorder.has(v) && height(v) > height(now));
    if (next.length === 0) break;
    way.push(next[Math.floor(rand() * next.length)]);
  }
  return way.slice(1).map((v, i): Edge => [way[i], v]);
}

export const largest = (patches: readonly Patch[]): Patch =>
  patches.reduce((most, patch) => (patch.meshTriangles.length > most.meshTriangles.length ? patch : most));
