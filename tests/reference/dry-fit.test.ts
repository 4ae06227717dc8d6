import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import { FOAM_RULES } from '../../src/model/foam-settings.ts';
import type { FoamPiece } from '../../src/model/foam-piece.ts';
import { DryFits } from '../../src/pipeline/dry-fit.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { partBends } from '../../src/steps/foam/part-bends.ts';
import { IS_LONG } from '../support/long.ts';
import { objOf, panels, type Solid } from './handbook/polygon-solids.ts';
import { PLATONIC, THREE_AT_A_CORNER } from './handbook/uniform-solids.ts';
import { assemble, platesOf, withEdgeMovedIn } from './plates.ts';
import { runChain, type ChainOutput } from './run-chain.ts';

const made = (solid: Solid): Promise<ChainOutput> =>
  runChain({
    fileName: 'solid.obj',
    bytes: objOf(solid),
    seams: solid.seams,
    scale: { by: 'unit', unit: 'mm' },
    thicknessMm: 10,
    modelIs: 'face',
    neutralFraction: 0.5,
  });

/** Far under any saw; what is left of rounding after twenty plates have been set one on another, mm. */
const EXACT_MM = 1e-6;

/** Those of more faces take most of the time and have no other kind of corner. */
const SOLIDS = [...PLATONIC, ...THREE_AT_A_CORNER].filter(({ faces }) => IS_LONG || faces.length < 30);

describe('plates put together from outlines and bevels alone', () => {
  it.each(SOLIDS)('close a $name, as the dry fit says', async (solid) => {
    const { report } = await made(solid);
    const misses = assemble(platesOf(report));
    expect(misses).toHaveLength(solid.seams.length);
    for (const { gapMm, apartMm } of misses) {
      expect(Math.abs(gapMm)).toBeLessThan(EXACT_MM);
      expect(apartMm).toBeLessThan(EXACT_MM);
    }
    expect(report.dryFit.perSeam).toHaveLength(solid.seams.length);
    expect(Math.max(report.dryFit.worstGapMm, report.dryFit.worstOverlapMm)).toBeLessThan(EXACT_MM);
  });
});

const [SHORT_MM, SIDE_MM] = [2, 80];

describe('an edge of a cube cut 2 mm short', () => {
  const cube = PLATONIC[1];
  it('shows 2 mm at its seam, face and back, and nowhere else', async () => {
    const { outcome, report } = await made(cube);
    const [piece] = outcome.pieces ?? [];
    const { seam } = piece.edges[0];
    const fit = await fitOf(outcome, [shortened(piece, seam)]);
    const beside = new Set(piece.edges.map((edge) => edge.seam as string));
    for (const found of fit.perSeam) {
      const lacks = found.seam === seam ? SHORT_MM : 0;
      expect(Math.abs(found.worstGapMm - lacks)).toBeLessThan(EXACT_MM);
      expect(found.worstOverlapMm).toBeLessThan(EXACT_MM);
      for (const gaps of [found.samples.faceGapMm, found.samples.backGapMm])
        for (const gap of gaps) expect(Math.abs(gap - lacks)).toBeLessThan(EXACT_MM);
      // The two edges that end at the short one have lost as much of their length.
      if (found.seam !== seam && !beside.has(found.seam)) expect(found.worstSlipMm).toBeLessThan(EXACT_MM);
    }
    expect(fit.perSeam.filter(({ worstSlipMm }) => Math.abs(worstSlipMm - SHORT_MM) < EXACT_MM)).toHaveLength(2);

    const plates = platesOf(report).map((plate) =>
      plate.id === piece.id ? withEdgeMovedIn(plate, seam, SHORT_MM) : plate,
    );
    // The short plate is set on by the edge across from its short one.
    const [first, ...others] = plates;
    const sides = first.edges.map((edge) => edge.seam);
    const misses = assemble([...others, first], [seam, sides[1], sides[3]]);
    for (const miss of misses) {
      const lacks = miss.seam === seam ? SHORT_MM : 0;
      expect(Math.abs(miss.gapMm - lacks)).toBeLessThan(EXACT_MM);
    }
  });
});

describe.each([0.02, 60, 90, -60])('an edge cut 2 mm short on a fold of %d degrees', (foldDeg) => {
  it('shows 2 mm', async () => {
    const { outcome } = await made(panels(SIDE_MM, SIDE_MM, (foldDeg * Math.PI) / 180));
    const [piece] = outcome.pieces ?? [];
    const seam = outcome.dryFit?.perSeam[0].seam ?? '';
    const [found] = (await fitOf(outcome, [shortened(piece, seam)])).perSeam;
    expect(Math.abs(found.worstGapMm - SHORT_MM)).toBeLessThan(EXACT_MM);
    expect(found.worstOverlapMm).toBe(0);
  });
});

/** The dry fit of an outcome with some pieces cut otherwise. */
async function fitOf(outcome: Outcome, changed: readonly FoamPiece[]) {
  const { sculpt, cut, layers, pieces, seams, part } = outcome;
  if (sculpt === null || cut === null || pieces === null || seams === null) throw new Error('an unfinished outcome');
  return new DryFits().of(
    {
      cut,
      hinges: layers[0].hinges,
      bends: partBends(sculpt.mesh, cut.patches, cut.chains, part!.pieceSettings, FOAM_RULES),
      pieces: pieces.map((piece) => changed.find(({ id }) => id === piece.id) ?? piece),
      seams,
      tooMuchPct: 8,
    },
    QUIET_WORK,
  );
}

/** A four-sided piece with the side of a seam moved in on both skins. */
function shortened(piece: FoamPiece, seam: string): FoamPiece {
  const edge = piece.edges.find((candidate) => candidate.seam === seam);
  if (edge === undefined) throw new Error(`no edge ${seam}`);
  const movedIn = (ring: Float64Array): Float64Array => {
    const [p, q] = [2 * edge.from, 2 * edge.to];
    const [dx, dy] = [ring[q] - ring[p], ring[q + 1] - ring[p + 1]];
    const scale = SHORT_MM / Math.hypot(dx, dy);
    const moved = ring.slice();
    for (const i of [p, q]) {
      moved[i] -= dy * scale;
      moved[i + 1] += dx * scale;
    }
    return moved;
  };
  return { ...piece, outline: movedIn(piece.outline), otherOutline: movedIn(piece.otherOutline) };
}
