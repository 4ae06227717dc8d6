import type { Mesh } from '../../src/mesh/mesh.ts';

/** Volume inside a closed mesh, mm³, by Gauss: positive where triangles run counter-clockwise seen from outside. */
export function enclosedVolume({ positions: p, triangles }: Pick<Mesh, 'positions' | 'triangles'>): number {
  let six = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [3 * triangles[i], 3 * triangles[i + 1], 3 * triangles[i + 2]];
    six +=
      p[a] * (p[b + 1] * p[c + 2] - p[b + 2] * p[c + 1]) +
      p[a + 1] * (p[b + 2] * p[c] - p[b] * p[c + 2]) +
      p[a + 2] * (p[b] * p[c + 1] - p[b + 1] * p[c]);
  }
  return six / 6;
}
