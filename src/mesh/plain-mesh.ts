import type { Mesh } from './mesh.ts';

/** A mesh that no file gave: each triangle a face of its own, each vertex under its own number, no groups. */
export function plainMesh(positions: Float64Array, triangles: Uint32Array): Mesh {
  const faceCount = triangles.length / 3;
  const fileVertex = Uint32Array.from({ length: positions.length / 3 }, (_, i) => i);
  return {
    positions,
    triangles,
    faceOfTriangle: Uint32Array.from({ length: faceCount }, (_, i) => i),
    faceCount,
    fileVertex,
    vertexOfFile: Int32Array.from(fileVertex),
    groupNames: [],
    groupOfFace: new Int32Array(faceCount).fill(-1),
  };
}
