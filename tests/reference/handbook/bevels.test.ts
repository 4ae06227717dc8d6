import { describe, expect, it } from 'vitest';
import { numbersOf } from './cases.ts';
import { layFlat } from './flat-figures.ts';
import { panels } from './polygon-solids.ts';

const DEG = 180 / Math.PI;
const [LENGTH, WIDTH] = [200, 120];

/** Handbook bevels of two flat panels whose outside is the model. The handbook counts the dihedral angle on the foam's side. */
describe.each([
  ['L1', 'inner_face_setback'],
  ['L2', 'inner_face_setback'],
  ['L4', 'inner_face_extension'],
])('bevel %s', (id, key) => {
  const { inputs, expected } = numbersOf(id);
  const { dihedral_deg: dihedral, thickness } = inputs;
  const fold = Math.PI - dihedral / DEG;
  // An extension is a set-back below nothing.
  const setback = (key === 'inner_face_extension' ? -1 : 1) * expected[key];
  const made = layFlat(panels(LENGTH, WIDTH, fold), { modelIs: 'face', thicknessMm: thickness });

  it('leans and steps back as the handbook says on both panels', async () => {
    const { pieces, seams } = await made;
    expect(pieces).toHaveLength(2);
    const [seam] = seams.filter((candidate) => candidate.kind !== 'open');
    for (const bevel of [seam.bevelDeg.min, seam.bevelDeg.max])
      expect(Math.abs(bevel - expected.bevel_from_square_deg)).toBeLessThan(1e-6);
    for (const piece of pieces) {
      const [edge] = piece.edges.filter((candidate) => candidate.seam === seam.id);
      for (const [i, face] of edge.faceOffsetMm.entries())
        expect(Math.abs(face - edge.backOffsetMm[i] - setback)).toBeLessThan(1e-6);
    }
  });

  it('cuts the panels of the model on their face, with a square edge all round but at the seam', async () => {
    for (const piece of (await made).pieces) {
      expect(Math.abs(piece.areaMm2 - LENGTH * WIDTH)).toBeLessThan(1e-6 * LENGTH * WIDTH);
      // The neutral surface lies half way to the back, so half the set-back inside.
      expect(Math.abs(piece.flatAreaMm2 - (LENGTH - setback / 2) * WIDTH)).toBeLessThan(1e-6 * LENGTH * WIDTH);
    }
  });
});
