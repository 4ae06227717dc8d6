import { readFileSync } from 'node:fs';
import type { Mesh } from '../../src/mesh/mesh.ts';
import { meshOf } from './meshes.ts';

/** Reads `v` and `f` lines of an OBJ file of triangles, by the simplest means. */
export function readTestObj(url: URL): Mesh {
  const points: [number, number, number][] = [];
  const faces: number[][] = [];
  for (const line of readFileSync(url, 'utf8').split('\n')) {
    const [word, ...rest] = line.trim().split(/\s+/);
    if (word === 'v') points.push([Number(rest[0]), Number(rest[1]), Number(rest[2])]);
    if (word === 'f') faces.push(rest.map((corner) => parseInt(corner, 10) - 1));
  }
  return meshOf(points, faces);
}
