import { expect, it } from 'vitest';
import { findMirror } from '../../src/mesh/mirror/mirror.ts';
import { topologyOf } from '../../src/mesh/topology.ts';
import { seamWishesOf } from '../../src/pipeline/seam-wishes.ts';
import { seamSetFromMarks } from '../../src/steps/seams/seam-set.ts';
import { expectOk } from '../support/expect-ok.ts';
import { boxMesh } from '../support/meshes.ts';

// The box, its top (face 1, corners 4 to 7) parted from the rest.
const mesh = boxMesh(60);
const ring = [
  [4, 5],
  [5, 7],
  [7, 6],
  [6, 4],
] as const;
const marks = { edges: [...ring], paths: [] };
const seams = expectOk(seamSetFromMarks(mesh, marks, true));

it('holds seams that are there, and no others', () => {
  const part = {
    regions: [],
    pieceSettings: [],
    heldSeams: [
      [5, 4],
      [0, 1],
      [7, 99],
    ] as [number, number][],
  };
  const { locked, fixedTriangles } = seamWishesOf(mesh, part, seams, null);
  expect([...locked.keys()].filter((e) => locked[e] === 1)).toEqual([topologyOf(mesh).edgeBetween(4, 5)]);
  expect(fixedTriangles.includes(1)).toBe(false);
});

it('holds all of a piece by one of its faces, and stops at its seams', () => {
  const held = (face: number): number =>
    seamWishesOf(mesh, { regions: [], pieceSettings: [{ face, held: true }] }, seams, null).fixedTriangles.reduce(
      (sum, flag) => sum + flag,
      0,
    );
  expect(held(1)).toBe(2);
  expect(held(0)).toBe(10);
  expect(
    seamWishesOf(mesh, { regions: [], pieceSettings: [{ face: 0, name: 'x' }] }, seams, null).fixedTriangles,
  ).toEqual(new Uint8Array(12));
});

it('passes the mirror on', () => {
  const mirror = findMirror(mesh);
  const wishes = seamWishesOf(mesh, { regions: [], pieceSettings: [] }, seams, mirror);
  expect(wishes.mirror).toBe(mirror?.partners.ofEdge);
  expect('mirror' in seamWishesOf(mesh, { regions: [], pieceSettings: [] }, seams, null)).toBe(false);
});
