import { readFileSync } from 'node:fs';
import { seededRandom } from '../../src/base/random.ts';
import type { Mesh } from '../../src/mesh/mesh.ts';
import { ball } from '../reference/handbook/ball.ts';
import { objOf, type Solid } from '../reference/handbook/polygon-solids.ts';
import { bumpyMesh } from '../support/bumpy-mesh.ts';
import { starTube, torus } from './shapes.ts';

/** A sculpt that random seams are laid on: the file a maker would open. */
export interface SeamMesh {
  readonly name: string;
  readonly bytes: () => Uint8Array;
}

type Point = readonly [number, number, number];

/** Twelve of them, small enough for a run in a fraction of a second: open and closed, with and without handles, holes and flat sides. */
export const SEAM_MESHES: readonly SeamMesh[] = [
  file('bracer', '../../samples/bracer.obj'),
  file('shoulder plate', '../../samples/shoulder-plate.obj'),
  file('maul head', '../../samples/maul-head.obj'),
  file('lantern', '../../samples/lantern.obj'),
  file('beast', '../reference/meshes/spot_control_mesh.obj'),
  file('barrel', '../reference/meshes/barrel_large.obj'),
  made('ball', () => ball(90, 1, 14, 9)),
  made('ring', () => torus(18, 9, 90, 35)),
  made('plate with two holes', plateWithTwoHoles),
  made('lump', () => solidOf(bumpyMesh(seededRandom(4), 20, 8, 14))),
  made('hills with two lakes', hillsWithTwoLakes),
  made('star', () => starTube(7, 90, 50, 80)),
];

function file(name: string, path: string): SeamMesh {
  return { name, bytes: () => new Uint8Array(readFileSync(new URL(path, import.meta.url))) };
}

function made(name: string, solid: () => Solid): SeamMesh {
  return { name, bytes: () => objOf(solid()) };
}

function solidOf({ positions, triangles }: Mesh): Solid {
  const triple = (list: ArrayLike<number>, i: number): Point => [list[3 * i], list[3 * i + 1], list[3 * i + 2]];
  return {
    corners: Array.from({ length: positions.length / 3 }, (_, v) => triple(positions, v)),
    faces: Array.from({ length: triangles.length / 3 }, (_, t) => triple(triangles, t)),
    seams: [],
  };
}

/** A thick plate of cells, bent a little everywhere, with two openings right through: two handles. */
function plateWithTwoHoles(): Solid {
  const [columns, rows, cellMm, thickMm] = [7, 5, 30, 40];
  const rand = seededRandom(9);
  const corners: Point[] = [];
  for (const z of [0, thickMm])
    for (let j = 0; j <= rows; j += 1)
      for (let i = 0; i <= columns; i += 1)
        corners.push([cellMm * i + 6 * rand(), cellMm * j + 6 * rand(), z + 8 * rand() + 12 * Math.sin(i)]);
  const at = (i: number, j: number, k: number): number => k * (columns + 1) * (rows + 1) + j * (columns + 1) + i;
  const isHole = (i: number, j: number): boolean => j === 2 && (i === 2 || i === 4);
  const isCell = (i: number, j: number): boolean => i >= 0 && j >= 0 && i < columns && j < rows && !isHole(i, j);
  const faces: number[][] = [];
  for (let j = 0; j < rows; j += 1)
    for (let i = 0; i < columns; i += 1) {
      if (!isCell(i, j)) continue;
      faces.push([at(i, j, 1), at(i + 1, j, 1), at(i + 1, j + 1, 1), at(i, j + 1, 1)]);
      faces.push([at(i, j, 0), at(i, j + 1, 0), at(i + 1, j + 1, 0), at(i + 1, j, 0)]);
      const sides = [
        [i, j - 1, i, j, i + 1, j],
        [i + 1, j, i + 1, j, i + 1, j + 1],
        [i, j + 1, i + 1, j + 1, i, j + 1],
        [i - 1, j, i, j + 1, i, j],
      ];
      for (const [ni, nj, ai, aj, bi, bj] of sides)
        if (!isCell(ni, nj)) faces.push([at(ai, aj, 0), at(bi, bj, 0), at(bi, bj, 1), at(ai, aj, 1)]);
    }
  return { corners, faces, seams: [] };
}

/** An open sheet of hills with two holes in it, of triangles of many forms. */
function hillsWithTwoLakes(): Solid {
  const [columns, rows, cellMm] = [14, 11, 22];
  const rand = seededRandom(17);
  const corners: Point[] = [];
  for (let j = 0; j <= rows; j += 1)
    for (let i = 0; i <= columns; i += 1) {
      const [x, y] = [cellMm * i + 12 * rand(), cellMm * j + 12 * rand()];
      corners.push([x, y, 25 * Math.sin(x / 40) * Math.cos(y / 50) + 6 * rand()]);
    }
  const at = (i: number, j: number): number => j * (columns + 1) + i;
  const isLake = (i: number, j: number): boolean => (i > 2 && i < 5 && j > 3 && j < 7) || (i === 9 && j === 5);
  const faces: number[][] = [];
  for (let j = 0; j < rows; j += 1)
    for (let i = 0; i < columns; i += 1) {
      if (isLake(i, j)) continue;
      const [a, b, c, d] = [at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)];
      if (rand() < 0.5) faces.push([a, b, c], [a, c, d]);
      else faces.push([a, b, d], [b, c, d]);
    }
  return { corners, faces, seams: [] };
}
