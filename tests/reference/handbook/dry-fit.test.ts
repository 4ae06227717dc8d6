import { describe, expect, it } from 'vitest';
import type { DryFit } from '../../../src/model/dry-fit.ts';
import type { ChainOutput } from '../run-chain.ts';
import { numbersOf } from './cases.ts';
import { panels, type Solid } from './polygon-solids.ts';
import { PLATONIC, THREE_AT_A_CORNER } from './uniform-solids.ts';
import { runSolid } from './flat-figures.ts';

/** Faces of the solids and handbook panels are the face of the foam. */
const made = (solid: Solid, thicknessMm: number): Promise<ChainOutput> => runSolid(solid, { thicknessMm });

/** Far under any saw, far over rounding, mm. */
const EXACT_MM = 1e-6;

function expectClosed(fit: DryFit | null): void {
  expect(fit).not.toBeNull();
  for (const seam of fit?.perSeam ?? []) {
    expect(Math.max(seam.worstGapMm, seam.worstOverlapMm), seam.letter).toBeLessThan(EXACT_MM);
    expect(Math.max(seam.worstSlipMm, seam.worstStepMm), seam.letter).toBeLessThan(EXACT_MM);
  }
}

describe.each(['L1', 'L2', 'L4'])('the two panels of handbook case %s', (id) => {
  const { inputs } = numbersOf(id);
  it('close at face and back', async () => {
    const { outcome } = await made(panels(200, 120, Math.PI - (inputs.dihedral_deg * Math.PI) / 180), inputs.thickness);
    expect(outcome.dryFit?.perSeam).toHaveLength(1);
    expectClosed(outcome.dryFit);
  });
});

describe.each([...PLATONIC, ...THREE_AT_A_CORNER])('$name with every edge a seam', (solid) => {
  it.each([6, 10])('has the published bevels and closes at face and back in %i mm foam', async (thicknessMm) => {
    const { outcome } = await made(solid, thicknessMm);
    const bevels = (outcome.pieces ?? []).flatMap((piece) => piece.edges.flatMap((edge) => [...edge.bevelDeg]));
    expect(bevels.length).toBeGreaterThanOrEqual(4 * solid.seams.length);
    for (const bevel of bevels) {
      const miss = Math.min(...solid.foldsDeg.map((fold) => Math.abs(bevel - fold / 2)));
      expect(miss).toBeLessThan(1e-9); // degrees
    }
    for (const fold of solid.foldsDeg) expect(bevels.some((bevel) => Math.abs(bevel - fold / 2) < 1e-9)).toBe(true);
    expect(outcome.dryFit?.perSeam).toHaveLength(solid.seams.length);
    expectClosed(outcome.dryFit);
  });
});
