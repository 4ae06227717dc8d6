import { triangleCount, vertexCount, type Mesh } from './mesh.ts';

/**
 * Throws where a mesh breaks its own promises: lengths that belong together, numbers in range, finite places, three different corners
 * per triangle. A mesh that fails here is our mistake, never the maker's.
 * @throws Error that names the first broken promise.
 */
export function checkMesh(mesh: Mesh): void {
  const vertices = vertexCount(mesh);
  const triangles = triangleCount(mesh);
  must(Number.isInteger(vertices), `${mesh.positions.length} coordinates are no triples`);
  must(Number.isInteger(triangles), `${mesh.triangles.length} corners are no triples`);
  must(mesh.faceOfTriangle.length === triangles, `${mesh.faceOfTriangle.length} faces for ${triangles} triangles`);
  must(mesh.fileVertex.length === vertices, `${mesh.fileVertex.length} file numbers for ${vertices} vertices`);
  must(mesh.groupOfFace.length === mesh.faceCount, `${mesh.groupOfFace.length} groups for ${mesh.faceCount} faces`);
  checkEach(mesh.positions, (value) => Number.isFinite(value), 'coordinate');
  checkEach(mesh.triangles, (v) => v < vertices, 'corner');
  checkEach(mesh.faceOfTriangle, (f) => f < mesh.faceCount, 'face');
  checkEach(mesh.groupOfFace, (g) => g >= -1 && g < mesh.groupNames.length, 'group');
  checkEach(mesh.vertexOfFile, (v) => v >= -1 && v < vertices, 'vertex of file');
  checkEach(mesh.fileVertex, (number, v) => mesh.vertexOfFile[number] === v, 'file number');
  checkEach(mesh.fileVertex, (number, v) => v === 0 || mesh.fileVertex[v - 1] < number, 'order of file number');
  for (let t = 0; t < triangles; t += 1) {
    const [a, b, c] = mesh.triangles.subarray(3 * t, 3 * t + 3);
    if (a === b || b === c || c === a) throw new Error(`mesh: triangle ${t} has corners ${a} ${b} ${c}`);
  }
}

function checkEach(list: ArrayLike<number>, isRight: (value: number, index: number) => boolean, what: string): void {
  for (let i = 0; i < list.length; i += 1)
    if (!isRight(list[i], i)) throw new Error(`mesh: ${what} ${i} is ${list[i]}`);
}

function must(isSo: boolean, otherwise: string): asserts isSo {
  if (!isSo) throw new Error(`mesh: ${otherwise}`);
}
