import type { Mesh } from '../../mesh/mesh.ts';
import { topologyOf } from '../../mesh/topology.ts';
import type { PieceSetting } from '../../model/foam-settings.ts';
import type { SeamSet } from '../../model/seams.ts';

/** 1 per edge of the mesh whose seam is held. @param pairs edges in file numbers; those that are no seams any more are passed over. */
export function heldEdges(mesh: Mesh, { isSeam }: SeamSet, pairs: readonly (readonly [number, number])[]): Uint8Array {
  const topology = topologyOf(mesh);
  const held = new Uint8Array(topology.edgeCount);
  for (const [a, b] of pairs) {
    const [v, w] = [mesh.vertexOfFile[a] ?? -1, mesh.vertexOfFile[b] ?? -1];
    const edge = v < 0 || w < 0 ? -1 : topology.edgeBetween(v, w);
    if (edge >= 0 && isSeam[edge] === 1) held[edge] = 1;
  }
  return held;
}

/** 1 per triangle of a piece that is held: all that hang together with one of its polygons across edges that are no seams. */
export function heldTriangles(mesh: Mesh, { isSeam }: SeamSet, settings: readonly PieceSetting[]): Uint8Array {
  const { edgeOfHalfedge, twin } = topologyOf(mesh);
  const faces = new Set(settings.filter(({ held }) => held === true).map(({ face }) => face));
  const held = new Uint8Array(mesh.triangles.length / 3);
  if (faces.size === 0) return held;
  const open: number[] = [];
  const take = (t: number): void => {
    if (held[t] === 1) return;
    held[t] = 1;
    open.push(t);
  };
  mesh.faceOfTriangle.forEach((face, t) => {
    if (faces.has(face)) take(t);
  });
  for (let t = open.pop(); t !== undefined; t = open.pop()) {
    for (let h = 3 * t; h < 3 * t + 3; h += 1)
      if (twin[h] >= 0 && isSeam[edgeOfHalfedge[h]] === 0) take(Math.floor(twin[h] / 3));
  }
  return held;
}
