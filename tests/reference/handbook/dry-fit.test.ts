import { describe, expect, it } from 'vitest';
import type { DryFit } from '../../../src/model/dry-fit.ts';
import { IS_LONG } from '../../support/long.ts';
import type { ChainOutput } from '../run-chain.ts';
import { numbersOf } from './cases.ts';
import { panels, type Solid } from './polygon-solids.ts';
import { MORE_AT_A_CORNER, PLATONIC, THREE_AT_A_CORNER } from './uniform-solids.ts';
import { runSolid } from './flat-figures.ts';

/** Faces of the solids and handbook panels are the face of the foam. */
const made = (solid: Solid, thicknessMm: number): Promise<ChainOutput> => runSolid(solid, { thicknessMm });

/** Far under any saw, far over rounding, mm. */
const EXACT_MM = 1e-6;

/** A solid of so many faces takes a second or more. */
const MANY_FACES = 30;

function expectClosed(fit: DryFit | null): void {
  expect(fit).not.toBeNull();
  for (const seam of fit?.perSeam ?? []) {
    expect(Math.max(seam.worstGapMm, seam.worstOverlapMm), seam.letter).toBeLessThan(EXACT_MM);
    expect(Math.max(seam.worstSlipMm, seam.worstStepMm), seam.letter).toBeLessThan(EXACT_MM);
  }
  expect(fit?.corners).toEqual([]);
}

describe.each(['L1', 'L2', 'L4'])('the two panels of handbook case %s', (id) => {
  const { inputs } = numbersOf(id);
  it('close at face and back', async () => {
    const { outcome } = await made(panels(200, 120, Math.PI - (inputs.dihedral_deg * Math.PI) / 180), inputs.thickness);
    expect(outcome.dryFit?.perSeam).toHaveLength(1);
    expectClosed(outcome.dryFit);
  });
});

/** Those of many faces take most of the time and add no other kind of corner. */
const SOLIDS = [...PLATONIC, ...THREE_AT_A_CORNER, ...MORE_AT_A_CORNER].filter(
  ({ faces }) => IS_LONG || faces.length < MANY_FACES,
);

describe.each(SOLIDS)('$name with every edge a seam', (solid) => {
  it.each(IS_LONG && solid.faces.length < MANY_FACES ? [6, 10] : [10])(
    'has the published bevels and closes at face and back in %i mm foam',
    async (thicknessMm) => {
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
    },
  );
});

/** Corners of four faces, in solids of few faces. */
const FEW_FACES = MORE_AT_A_CORNER.filter(({ faces }) => faces.length < (IS_LONG ? MANY_FACES : 20));

describe.each(FEW_FACES)('$name as another surface of the foam', (solid) => {
  it.each(['middle', 'back'] as const)('closes where it is the %s', async (modelIs) => {
    const { outcome } = await runSolid(solid, { thicknessMm: 10, modelIs });
    expectClosed(outcome.dryFit);
  });
});

describe.each(FEW_FACES)('plates of a $name', (solid) => {
  /** Areas of all plates at one depth under the face, and the room inside them, from the cut outlines and the planes alone. */
  async function layerAt(depthMm: number): Promise<{ readonly areaMm2: number; readonly insideMm3: number }> {
    const { outcome, report } = await made(solid, depthMm);
    const plates = report.pieces.map((piece) => {
      const back = ringArea(piece.tracedSide === 'back' ? piece.outlineMm : piece.otherOutlineMm);
      const [a, b, c] = piece.flat.triangles[0].map((v) => solid.corners[piece.flat.sourceVertices[v]]);
      return { back, fromMiddle: distanceFromMiddle(a, b, c) - depthMm };
    });
    expect(outcome.findings.map(({ code }) => code)).not.toContain('shell/corner-of-many-planes');
    return {
      areaMm2: plates.reduce((sum, { back }) => sum + back, 0),
      insideMm3: plates.reduce((sum, { back, fromMiddle }) => sum + (back * fromMiddle) / 3, 0),
    };
  }

  // Trimmed as they are, the backs of the plates close round the room inside: it shrinks by as much as they take up. Their areas are
  // quadratic in the depth, so that three depths tell all of the foam between the first and the last (Simpson's rule is exact).
  it('take up the whole of the wall, and nothing twice', async () => {
    const [outer, middle, inner] = [await layerAt(4), await layerAt(7), await layerAt(10)];
    const foamMm3 = ((10 - 4) / 6) * (outer.areaMm2 + 4 * middle.areaMm2 + inner.areaMm2);
    expect(foamMm3 / (outer.insideMm3 - inner.insideMm3)).toBeCloseTo(1, 10);
  });
});

type Point = readonly [number, number, number];

function distanceFromMiddle(a: Point, b: Point, c: Point): number {
  const [u, v] = [b, c].map((p) => p.map((x, k) => x - a[k]));
  const normal = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
  return normal.reduce((sum, x, k) => sum + x * a[k], 0) / Math.hypot(...normal);
}

const ringArea = (ring: readonly (readonly [number, number])[]): number =>
  ring.reduce((sum, [x, y], i) => {
    const [nx, ny] = ring[(i + 1) % ring.length];
    return sum + (x * ny - y * nx) / 2;
  }, 0);
