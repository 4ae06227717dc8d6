import { readFileSync } from 'node:fs';
import { seededRandom } from '../../src/base/random.ts';
import type { Mesh } from '../../src/mesh/mesh.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import { simplify } from '../../src/mesh/simplify/simplify.ts';
import { readModel } from '../../src/steps/read/read-model.ts';
import { meshFromModel } from '../../src/steps/read/size.ts';
import { ball } from '../reference/handbook/ball.ts';
import { objOf, type Solid } from '../reference/handbook/polygon-solids.ts';
import { randomPolyhedron } from '../support/random-polyhedron.ts';
import { bumpyMesh } from '../support/bumpy-mesh.ts';
import { starTube, torus } from './shapes.ts';

/** A sculpt that random seams are laid on: the file a maker would open. */
export interface SeamMesh {
  readonly name: string;
  readonly bytes: () => Promise<Uint8Array>;
}

type Point = readonly [number, number, number];

/**
 * Twelve of them, open and closed, with and without handles, holes and flat sides. Models of some hundred triangles are made coarser, so that a run
 * takes a fraction of a second: most of it goes to laying many small pieces.
 */
export const SEAM_MESHES: readonly SeamMesh[] = [
  file('bracer', '../../samples/bracer.obj', 24),
  file('shoulder plate', '../../samples/shoulder-plate.obj', 24),
  file('maul head', '../../samples/maul-head.obj', 32),
  file('lantern', '../../samples/lantern.obj', 32),
  made('cut stone', () => randomPolyhedron(seededRandom(2), 11, 80)),
  file('room', '../reference/meshes/cornell_box.obj', 36),
  made('ball', () => ball(90, 1, 6, 4)),
  made('ring', () => torus(6, 4, 90, 35)),
  made('plate with two holes', plateWithTwoHoles),
  made('lump', () => solidOf(bumpyMesh(seededRandom(4), 20, 5, 6))),
  made('hills with two lakes', hillsWithTwoLakes),
  made('star', () => starTube(5, 90, 50, 80)),
];

/** @param triangles  so many are left of it. */
function file(name: string, path: string, triangles: number): SeamMesh {
  return {
    name,
    bytes: async () => {
      const bytes = new Uint8Array(readFileSync(new URL(path, import.meta.url)));
      const model = await readModel(bytes, path, QUIET_WORK);
      if (!model.ok) throw new Error(`${name}: ${model.problem.text}`);
      const mesh = meshFromModel(model.value, 1);
      const isKept = new Uint8Array(mesh.positions.length / 3);
      const { corners } = simplify(mesh, { triangles, offMm: Infinity, isKept, partner: null });
      return objOf(usedOf(solidOf({ positions: mesh.positions, triangles: corners })));
    },
  };
}

/** Without corners that no face has. */
function usedOf({ corners, faces, seams }: Solid): Solid {
  const used = [...new Set(faces.flat())].sort((a, b) => a - b);
  const numbers = new Map(used.map((v, i) => [v, i]));
  return {
    corners: used.map((v) => corners[v]),
    faces: faces.map((face) => face.map((v) => numbers.get(v) ?? 0)),
    seams,
  };
}

function made(name: string, solid: () => Solid): SeamMesh {
  return { name, bytes: () => Promise.resolve(objOf(solid())) };
}

function solidOf({ positions, triangles }: Pick<Mesh, 'positions' | 'triangles'>): Solid {
  const triple = (list: ArrayLike<number>, i: number): Point => [list[3 * i], list[3 * i + 1], list[3 * i + 2]];
  return {
    corners: Array.from({ length: positions.length / 3 }, (_, v) => triple(positions, v)),
    faces: Array.from({ length: triangles.length / 3 }, (_, t) => triple(triangles, t)),
    seams: [],
  };
}

/** A thick plate of cells, bent a little everywhere, with two openings right through: two handles. */
function plateWithTwoHoles(): Solid {
  const [columns, rows, cellMm, thickMm] = [5, 3, 40, 40];
  const rand = seededRandom(9);
  const corners: Point[] = [];
  for (const z of [0, thickMm])
    for (let j = 0; j <= rows; j += 1)
      for (let i = 0; i <= columns; i += 1)
        corners.push([cellMm * i + 6 * rand(), cellMm * j + 6 * rand(), z + 8 * rand() + 12 * Math.sin(i)]);
  const at = (i: number, j: number, k: number): number => k * (columns + 1) * (rows + 1) + j * (columns + 1) + i;
  const isHole = (i: number, j: number): boolean => j === 1 && (i === 1 || i === 3);
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
  const [columns, rows, cellMm] = [5, 4, 50];
  const rand = seededRandom(17);
  const corners: Point[] = [];
  for (let j = 0; j <= rows; j += 1)
    for (let i = 0; i <= columns; i += 1) {
      const [x, y] = [cellMm * i + 18 * rand(), cellMm * j + 18 * rand()];
      corners.push([x, y, 25 * Math.sin(x / 40) * Math.cos(y / 50) + 6 * rand()]);
    }
  const at = (i: number, j: number): number => j * (columns + 1) + i;
  const isLake = (i: number, j: number): boolean => (i === 1 && j === 2) || (i === 3 && j === 1);
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
