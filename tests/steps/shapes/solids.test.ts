import { describe, expect, it } from 'vitest';
import { deg } from '../../../src/geom/vec.ts';
import { netPiece } from '../../../src/steps/shapes/face-pieces.ts';
import { makeShape } from '../../../src/steps/shapes/make-shape.ts';
import { angleDefect, surfaceArea } from '../../../src/steps/shapes/polyhedron.ts';
import { readSizes } from '../../../src/steps/shapes/read-sizes.ts';
import { DOME } from '../../../src/steps/shapes/dome.ts';
import { ARCHIMEDEAN, PLATONIC, uniformSolid } from '../../../src/steps/shapes/uniform-solids.ts';
import { expectOk } from '../../support/expect-ok.ts';

describe.each([...PLATONIC, ...ARCHIMEDEAN])('%s', (name) => {
  const solid = uniformSolid(name);
  it('is closed, with edges of one length and corners that are alike', () => {
    expect(solid.corners.length - solid.edges.length + solid.faces.length).toBe(2);
    expect(solid.faces.reduce((sum, face) => sum + face.length, 0)).toBe(2 * solid.edges.length);
    for (const { length } of solid.edges) expect(length).toBeCloseTo(1, 9);
    const defects = solid.corners.map((_, v) => angleDefect(solid, v));
    for (const one of defects) expect(one).toBeCloseTo(defects[0], 9);
    expect(defects.reduce((sum, one) => sum + one, 0)).toBeCloseTo(4 * Math.PI, 8);
  });

  it('has flat faces that turn outward', () => {
    solid.faces.forEach((face, f) => {
      const { x, y, z } = solid.normals[f];
      const heights = face.map((v) => solid.corners[v]).map((p) => p.x * x + p.y * y + p.z * z);
      for (const one of heights) expect(one).toBeCloseTo(heights[0], 9);
      expect(heights[0]).toBeGreaterThan(0);
    });
  });

  it('has a net in one piece that does not lie over itself', () => {
    const { piece, cutEdges, overlaps } = netPiece(solid);
    expect(overlaps).toBe(false);
    expect(cutEdges).toBe(solid.edges.length - solid.faces.length + 1);
    expect(piece.folds).toHaveLength(solid.faces.length - 1);
    expect(piece.areaMm2).toBeCloseTo(surfaceArea(solid), 8);
    const seams = new Map<string, number>();
    for (const { seam = '' } of piece.outline) seams.set(seam, (seams.get(seam) ?? 0) + 1);
    expect([...seams.values()]).toEqual(Array.from({ length: cutEdges }, () => 2));
  });
});

/** Angles between faces as tables of polyhedra print them (P. Cromwell, Polyhedra, 1997; two decimals of a degree). */
it.each([
  ['snub_cube', 153.23],
  ['snub_cube', 142.98],
  ['snub_dodecahedron', 164.18],
  ['snub_dodecahedron', 152.93],
  ['rhombicosidodecahedron', 159.09],
  ['truncated_icosidodecahedron', 142.62],
] as const)('%s has faces under %d degrees', (name, angle) =>
  expect(uniformSolid(name).edges.some(({ dihedral }) => Math.abs(deg(dihedral) - angle) < 0.006)).toBe(true),
);

/** Chord factors of domes over an icosahedron, class I, as chord tables print them to five places. */
it.each<[string, readonly number[]]>([
  ['3', [0.34862, 0.40355, 0.41241]],
  ['4', [0.25318, 0.29453, 0.29524, 0.29859, 0.31287, 0.32492]],
])('a dome of frequency %s has the struts of the tables', (frequency, factors) => {
  const sizes = [
    ['frequency', frequency],
    ['radius', '1'],
  ] as const;
  const { measures } = expectOk(makeShape(DOME, expectOk(readSizes(DOME, sizes))));
  const found = measures.filter(({ name }) => name.startsWith('chord_factor_'));
  expect(found.map(({ value }) => value)).toEqual(factors.map((one) => expect.closeTo(one, 5) as number));
  expect(found[0].name).toBe('chord_factor_A');
});
