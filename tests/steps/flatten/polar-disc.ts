import type { Mesh } from '../../../src/mesh/mesh.ts';
import { meshOf } from '../../support/meshes.ts';

/** Distance between two points given by radius and turn. */
export type Away = (p: readonly [number, number], q: readonly [number, number]) => number;

/**
 * A disc of triangles: one vertex in the middle, 6 i on ring i, joined like a honeycomb's middles.
 * @param point  place of the vertex on ring `i` at `share` of a turn.
 */
export function polarDisc(rings: number, point: (i: number, share: number) => [number, number, number]): Mesh {
  const points = [point(0, 0)];
  const startOf = (i: number): number => (i === 0 ? 0 : 1 + 3 * i * (i - 1));
  const faces: number[][] = [];
  for (let i = 1; i <= rings; i += 1) {
    for (let j = 0; j < 6 * i; j += 1) points.push(point(i, j / (6 * i)));
    for (let sector = 0; sector < 6; sector += 1) {
      const outer = (j: number): number => startOf(i) + ((sector * i + j) % (6 * i));
      const inner = (j: number): number => (i === 1 ? 0 : startOf(i - 1) + ((sector * (i - 1) + j) % (6 * (i - 1))));
      for (let j = 0; j < i; j += 1) {
        faces.push([inner(j), outer(j), outer(j + 1)]);
        if (j + 1 < i) faces.push([inner(j), outer(j + 1), inner(j + 1)]);
      }
    }
  }
  return meshOf(points, faces);
}
