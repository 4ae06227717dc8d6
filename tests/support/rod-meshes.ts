import type { Mesh } from '../../src/mesh/mesh.ts';
import { meshOf } from './meshes.ts';

/** A closed rod round z with flat ends: `sides` flat sides, corners on radius `r`, from z `from` to `to` in `rings` steps. */
export function rodMesh(sides: number, r: number, from: number, to: number, rings = 1): Mesh {
  const points: [number, number, number][] = [];
  for (let j = 0; j <= rings; j += 1)
    for (let i = 0; i < sides; i += 1) {
      const angle = (2 * Math.PI * i) / sides;
      points.push([r * Math.cos(angle), r * Math.sin(angle), from + ((to - from) * j) / rings]);
    }
  const faces: number[][] = [];
  for (let j = 0; j < rings; j += 1)
    for (let i = 0; i < sides; i += 1) {
      const k = (i + 1) % sides;
      faces.push([j * sides + i, j * sides + k, (j + 1) * sides + k, (j + 1) * sides + i]);
    }
  const low = points.length;
  points.push([0, 0, from], [0, 0, to]);
  for (let i = 0; i < sides; i += 1) {
    const k = (i + 1) % sides;
    faces.push([low, k, i], [low + 1, rings * sides + i, rings * sides + k]);
  }
  return meshOf(points, faces);
}
