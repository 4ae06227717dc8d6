import type { Mesh } from '../../../src/mesh/mesh.ts';
import { meshOf } from '../../support/meshes.ts';

type Point = readonly [number, number, number];

/**
 * A sheet of `columns` by `rows` quads, each cut along the same diagonal; corner (i, j) has the number `j (columns + 1) + i`, less the
 * corners that no quad uses any more.
 * @param isOpen  true for a quad that is left out.
 */
export function gridMesh(
  columns: number,
  rows: number,
  pointAt: (i: number, j: number) => Point,
  isOpen: (i: number, j: number) => boolean = () => false,
): Mesh {
  const points: Point[] = [];
  for (let j = 0; j <= rows; j += 1) for (let i = 0; i <= columns; i += 1) points.push(pointAt(i, j));
  const faces: number[][] = [];
  for (let j = 0; j < rows; j += 1) {
    for (let i = 0; i < columns; i += 1) {
      const a = j * (columns + 1) + i;
      if (!isOpen(i, j)) faces.push([a, a + 1, a + columns + 2, a + columns + 1]);
    }
  }
  const used = [...new Set(faces.flat())].sort((a, b) => a - b);
  const number = new Map(used.map((v, i) => [v, i]));
  return meshOf(
    used.map((v) => points[v]),
    faces.map((face) => face.map((v) => number.get(v) ?? -1)),
  );
}
