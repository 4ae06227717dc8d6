import { describe, expect, it } from 'vitest';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { meshOf, tubeMesh } from '../../support/meshes.ts';
import { lay, WISHES } from './flat-outline.ts';
import { referencePatch } from './flatten-support.ts';
import {
  capMesh,
  combMesh,
  crumpledBall,
  emptyEars,
  fanMesh,
  joinedSheet,
  ruffle,
  squeezedSheet,
  wavyStrip,
  windowedDome,
} from './hostile-meshes.ts';
import { movedAndTurned, scaled } from './remade-mesh.ts';

const row = (from: number): number[] => Array.from({ length: 10 }, (_, i) => from + i);

const SETTLES: readonly (readonly [string, () => Mesh])[] = [
  [
    'one triangle',
    () =>
      meshOf(
        [
          [0, 0, 0],
          [10, 0, 0],
          [3, 7, 2],
        ],
        [[0, 1, 2]],
      ),
  ],
  [
    'two triangles',
    () =>
      meshOf(
        [
          [0, 0, 0],
          [10, 0, 0],
          [3, 7, 2],
          [5, -6, 4],
        ],
        [
          [0, 1, 2],
          [1, 0, 3],
        ],
      ),
  ],
  [
    'two triangles, one of them empty',
    () =>
      meshOf(
        [
          [0, 0, 0],
          [10, 0, 0],
          [3, 7, 2],
          [5, 0, 0],
        ],
        [
          [0, 1, 2],
          [1, 0, 3],
        ],
      ),
  ],
  [
    'two triangles, one of them with two corners in one place',
    () =>
      meshOf(
        [
          [0, 0, 0],
          [10, 0, 0],
          [3, 7, 2],
          [10, 0, 0],
        ],
        [
          [0, 1, 2],
          [1, 0, 3],
        ],
      ),
  ],
  [
    'two triangles folded onto each other',
    () =>
      meshOf(
        [
          [0, 0, 0],
          [10, 0, 0],
          [3, 7, 2],
          [3, 7, 2],
        ],
        [
          [0, 1, 2],
          [1, 0, 3],
        ],
      ),
  ],
  [
    'three triangles round a spike of 300 mm',
    () =>
      meshOf(
        [
          [0, 0, 0],
          [100, 0, 0],
          [30, 70, 0],
          [40, 30, 300],
        ],
        [
          [0, 1, 3],
          [1, 2, 3],
          [2, 0, 3],
        ],
      ),
  ],
  ['a flat fan of 200', () => fanMesh(200, 0, 0, 0)],
  ['a fan of 200, a cone', () => fanMesh(200, 80, 0, 0)],
  ['a fan of 200, a spike', () => fanMesh(200, 1000, 0, 0)],
  ['a fan of 200, a saddle', () => fanMesh(200, 0, 60, 4)],
  ['a fan of 200, a ruff of three times the rim', () => fanMesh(200, 0, 150, 4)],
  ['a dome with 225 windows', () => windowedDome(2)],
  ['a dome with 36 windows', () => windowedDome(5)],
  ['a ring without a slit', () => tubeMesh(40, 50, 30, 3)],
  ['a cap of 150 degrees to each side', () => capMesh((150 * Math.PI) / 180, 20, 30)],
  ['a ball with a hole of 4 mm', () => capMesh((178 * Math.PI) / 180, 20, 30)],
  ['a strip 100 times as long as wide', () => wavyStrip(100)],
  ['a strip 1000 times as long as wide', () => wavyStrip(1000)],
  ['a comb', combMesh],
  ['a ruffle', ruffle],
  ['a crumpled ball', () => crumpledBall(7)],
  ['two neighbours inside in one place', () => joinedSheet([[60, 61]])],
  ['two neighbours on the border in one place', () => joinedSheet([[4, 5]])],
  ['a corner in the place of its neighbour', () => joinedSheet([[0, 1]])],
  ['two corners far apart in one place', () => joinedSheet([[14, 100]])],
  ['a border corner in the place of an inner one', () => joinedSheet([[5, 16]])],
  [
    'three corners in one place',
    () =>
      joinedSheet([
        [60, 61],
        [71, 61],
      ]),
  ],
  ['a whole side in one place', () => joinedSheet(row(1).map((v) => [v, 0]))],
  ['two rows in one place', () => joinedSheet(row(55).map((v) => [v, v + 11]))],
  ['empty ears on the border', () => emptyEars(1)],
  ['empty ears on empty ears', () => emptyEars(5)],
  ['rows of needles of a thousandth', () => squeezedSheet(1e-3)],
  ['rows of needles of a millionth', () => squeezedSheet(1e-6)],
  ['rows without height', () => squeezedSheet(0)],
  ['a mask 1000 km from the origin', () => movedAndTurned(referencePatch('mask-1k'), 1, [1e6, -1e6, 1e6]).mesh],
  ['a mask of 2 micrometres', () => scaled(referencePatch('mask-1k'), 1e-5).mesh],
  ['a mask of 100 m', () => scaled(referencePatch('mask-1k'), 500).mesh],
  [
    'a cone slit to a full turn, 1000 km from the origin',
    () => movedAndTurned(referencePatch('frustum360-500'), 2, [1e6, 1e6, -1e6]).mesh,
  ],
];

describe.each(WISHES.slice(0, 2))('a patch that is asking for trouble, %s', (_, wish) => {
  it.each(SETTLES)('lies without a flip and settles: %s', async (_name, make) => {
    const { piece } = await lay(make(), wish);
    expect(piece.flipped).toBe(0);
    expect(piece.solve.converged).toBe(true);
  });
});
