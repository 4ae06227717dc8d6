import { expect, it } from 'vitest';
import { add3, cross3, dot3, scale3, vec3 } from '../../src/geom/vec.ts';
import { findMirror } from '../../src/mesh/mirror/mirror.ts';
import { topologyOf } from '../../src/mesh/topology.ts';
import { HIDDEN_SIDES, hiddenDirection, type HiddenSide } from '../../src/model/hidden-side.ts';
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
    upAxis: 'y' as const,
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
    seamWishesOf(
      mesh,
      { regions: [], upAxis: 'y', pieceSettings: [{ face, held: true }] },
      seams,
      null,
    ).fixedTriangles.reduce((sum, flag) => sum + flag, 0);
  expect(held(1)).toBe(2);
  expect(held(0)).toBe(10);
  expect(
    seamWishesOf(mesh, { regions: [], upAxis: 'y', pieceSettings: [{ face: 0, name: 'x' }] }, seams, null)
      .fixedTriangles,
  ).toEqual(new Uint8Array(12));
});

it('passes the mirror on', () => {
  const mirror = findMirror(mesh);
  const wishes = seamWishesOf(
    mesh,
    { regions: [], upAxis: 'y', pieceSettings: [] },
    seams,
    mirror?.partners.ofEdge ?? null,
  );
  expect(wishes.mirror).toBe(mirror?.partners.ofEdge);
  expect('mirror' in seamWishesOf(mesh, { regions: [], upAxis: 'y', pieceSettings: [] }, seams, null)).toBe(false);
});

it('makes seams cheaper on the side that is hidden, as the sculpt stands', () => {
  const weightAt = (hiddenSide: HiddenSide | undefined, upAxis: 'y' | 'z'): number =>
    seamWishesOf(
      mesh,
      { regions: [], pieceSettings: [], upAxis, ...(hiddenSide === undefined ? {} : { hiddenSide }) },
      seams,
      null,
    ).weights[topologyOf(mesh).edgeBetween(0, 1)];
  const plain = weightAt(undefined, 'y');
  // Two of the sides meet at the edge: each counts half, at 0.6 of the price.
  const cheaper = HIDDEN_SIDES.filter((side) => weightAt(side, 'y') < plain);
  expect(cheaper).toHaveLength(2);
  for (const side of cheaper) expect(weightAt(side, 'y')).toBeCloseTo(0.8 * plain, 12);
});

it('stands a file by its axis that is up: up, back and left agree with the bench', () => {
  for (const up of ['x', 'y', 'z'] as const) {
    const [back, under, left, right] = HIDDEN_SIDES.map((side) => hiddenDirection(side, up));
    expect(under[up]).toBe(-1);
    expect(add3(left, right)).toEqual(vec3(0, 0, 0));
    // Right, up and front make a right-handed frame.
    expect(dot3(cross3(right, scale3(under, -1)), scale3(back, -1))).toBe(1);
  }
});
