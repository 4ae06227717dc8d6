import type { Mesh } from '../../mesh/mesh.ts';
import { topologyOf } from '../../mesh/topology.ts';
import type { Patch } from '../../model/patch.ts';
import type { SeamSet } from '../../model/seams.ts';
import { cutPatches } from './cut-patches.ts';

/** The patch as a surface of its own: local vertices and triangles, so that paths and cuts need not look at the rest of the sculpt. */
export function patchAsMesh(patch: Patch, positions: Float64Array): Mesh {
  const points = new Float64Array(3 * patch.meshVertices.length);
  patch.meshVertices.forEach((v, i) => points.set(positions.subarray(3 * v, 3 * v + 3), 3 * i));
  const faceCount = patch.meshTriangles.length;
  const numbers = patch.meshVertices.map((_, i) => i);
  return {
    positions: points,
    triangles: patch.triangles,
    faceOfTriangle: patch.meshTriangles.map((_, t) => t),
    faceCount,
    fileVertex: numbers,
    vertexOfFile: Int32Array.from(numbers),
    groupNames: [],
    groupOfFace: new Int32Array(faceCount).fill(-1),
  };
}

/**
 * Edges of a patch's own surface that are a border although two triangles meet there: both sides of a slit of one edge, which doubles no
 * vertex. Without them such a slit would heal.
 */
export function slitEdges(mesh: Mesh, patch: Patch): Uint8Array {
  const topology = topologyOf(mesh);
  const isSlit = new Uint8Array(topology.edgeCount);
  for (const loop of patch.loops) {
    for (let i = 0; i < loop.length; i += 1) {
      const edge = topology.edgeBetween(loop[i], loop[(i + 1) % loop.length]);
      if (topology.twin[topology.halfedgeOfEdge[edge]] >= 0) isSlit[edge] = 1;
    }
  }
  return isSlit;
}

/**
 * Cuts one patch once more, as cutting the whole sculpt along the same edges would.
 * @param edges      pairs of local vertices of the patch, each a side of its triangles.
 * @param positions  x y z of the whole sculpt's vertices, mm.
 * @returns what it falls into, numbered by its lowest triangle, and for each of its local vertices the one of `patch` it came from.
 */
export function cutPatchAgain(
  patch: Patch,
  edges: readonly (readonly [number, number])[],
  positions: Float64Array,
): readonly { readonly patch: Patch; readonly localOf: Uint32Array }[] {
  const mesh = patchAsMesh(patch, positions);
  const topology = topologyOf(mesh);
  const isSeam = slitEdges(mesh, patch);
  for (const [v, w] of edges) isSeam[topology.edgeBetween(v, w)] = 1;
  const seams: SeamSet = { isSeam, count: isSeam.reduce((sum, one) => sum + one, 0) };
  return cutPatches(mesh, seams, mesh.positions).patches.map((part) => ({
    patch: {
      ...part,
      meshTriangles: part.meshTriangles.map((t) => patch.meshTriangles[t]),
      meshVertices: part.meshVertices.map((v) => patch.meshVertices[v]),
      findings: part.findings.map((finding) => ({
        ...finding,
        where: { triangles: (finding.where.triangles ?? []).map((t) => patch.meshTriangles[t]) },
      })),
    },
    localOf: part.meshVertices,
  }));
}
