import type { Mesh } from '../../../src/mesh/mesh.ts';
import { meshOf } from '../../support/meshes.ts';

/**
 * A random disc: a bumpy sheet in which whole rows and columns are squeezed into needles, some corners pushed onto their neighbours'
 * lines, a third of the times with a window, diagonals at random.
 */
export function needleDisc(rand: () => number): Mesh {
  const columns = 4 + Math.floor(9 * rand());
  const rows = 4 + Math.floor(9 * rand());
  const squeeze = 10 ** (-1 - 5 * rand());
  const bump = 6 * rand() * rand();
  const step = (): number => (rand() < 0.2 ? squeeze : 5 + 5 * rand());
  const xs = runningSums(columns, step);
  const ys = runningSums(rows, step);
  const points: [number, number, number][] = [];
  for (const y of ys) for (const x of xs) points.push([x, y, bump * Math.sin(x / 9) * Math.cos(y / 7)]);
  const at = (i: number, j: number): number => j * (columns + 1) + i;
  for (let j = 1; j < rows; j += 1) {
    for (let i = 1; i < columns; i += 1) {
      if (rand() > 0.08) continue;
      // Onto the line between two neighbours: the triangle between the three has no area.
      const [p, q] = [points[at(i - 1, j)], points[at(i + 1, j)]];
      points[at(i, j)] = [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2, (p[2] + q[2]) / 2];
    }
  }
  const hasWindow = rand() < 0.33;
  const faces: number[][] = [];
  for (let j = 0; j < rows; j += 1) {
    for (let i = 0; i < columns; i += 1) {
      if (hasWindow && i === columns >> 1 && j === rows >> 1) continue;
      const [a, b, c, d] = [at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)];
      if (rand() < 0.5) faces.push([a, b, c], [a, c, d]);
      else faces.push([a, b, d], [b, c, d]);
    }
  }
  return meshOf(points, faces);
}

function runningSums(count: number, step: () => number): number[] {
  const sums = [0];
  for (let i = 0; i < count; i += 1) sums.push(sums[i] + step());
  return sums;
}
