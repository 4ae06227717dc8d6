import type { Mesh } from '../../src/mesh/mesh.ts';

/** A mesh of polygons fanned from their first corner, numbers as given. For small hand-made test shapes. */
export function meshOf(
  points: readonly (readonly [number, number, number])[],
  faces: readonly (readonly number[])[],
): Mesh {
  const triangles: number[] = [];
  const faceOfTriangle: number[] = [];
  for (const [f, face] of faces.entries()) {
    for (let k = 1; k + 1 < face.length; k += 1) {
      triangles.push(face[0], face[k], face[k + 1]);
      faceOfTriangle.push(f);
    }
  }
  const numbers = points.map((_, i) => i);
  return {
    positions: Float64Array.from(points.flat()),
    triangles: Uint32Array.from(triangles),
    faceOfTriangle: Uint32Array.from(faceOfTriangle),
    faceCount: faces.length,
    fileVertex: Uint32Array.from(numbers),
    vertexOfFile: Int32Array.from(numbers),
    groupNames: [],
    groupOfFace: new Int32Array(faces.length).fill(-1),
  };
}

/** A box with corner at the origin; corner numbers x + 2 y + 4 z. */
export function boxMesh(a: number, b = a, c = a): Mesh {
  const points = [0, 1, 2, 3, 4, 5, 6, 7].map((i) => [(i & 1) * a, ((i >> 1) & 1) * b, (i >> 2) * c] as const);
  return meshOf(points, [
    [0, 2, 3, 1],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ]);
}

/** An open tube round z: `sides` flat sides, corners on radius `r`; bottom ring 0..sides-1, then rings upward in `rings` steps. */
export function tubeMesh(sides: number, r: number, height: number, rings = 1): Mesh {
  const points: [number, number, number][] = [];
  for (let j = 0; j <= rings; j += 1) {
    for (let i = 0; i < sides; i += 1) {
      const angle = (2 * Math.PI * i) / sides;
      points.push([r * Math.cos(angle), r * Math.sin(angle), (height * j) / rings]);
    }
  }
  const faces: number[][] = [];
  for (let j = 0; j < rings; j += 1) {
    for (let i = 0; i < sides; i += 1) {
      const next = (i + 1) % sides;
      faces.push([j * sides + i, j * sides + next, (j + 1) * sides + next, (j + 1) * sides + i]);
    }
  }
  return meshOf(points, faces);
}

/** A closed ring (torus) round z of `m` times `n` quads. */
export function torusMesh(m: number, n: number, big: number, small: number): Mesh {
  const points: [number, number, number][] = [];
  for (let i = 0; i < m; i += 1) {
    for (let j = 0; j < n; j += 1) {
      const [u, v] = [(2 * Math.PI * i) / m, (2 * Math.PI * j) / n];
      points.push([
        (big + small * Math.cos(v)) * Math.cos(u),
        (big + small * Math.cos(v)) * Math.sin(u),
        small * Math.sin(v),
      ]);
    }
  }
  const at = (i: number, j: number): number => (i % m) * n + (j % n);
  const faces: number[][] = [];
  for (let i = 0; i < m; i += 1) {
    for (let j = 0; j < n; j += 1) faces.push([at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)]);
  }
  return meshOf(points, faces);
}
