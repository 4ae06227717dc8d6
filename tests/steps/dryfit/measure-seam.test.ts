import { describe, expect, it } from 'vitest';
import type { FoamSeam } from '../../../src/model/foam-piece.ts';
import type { FitSide } from '../../../src/steps/dryfit/fit-side.ts';
import { measureSeam } from '../../../src/steps/dryfit/measure-seam.ts';
import { squareSide, type SquareChoice } from './square-side.ts';

const MOST_SHARE = 0.08;

/** The same plate on the other side of its bottom edge: side 1 of the seam, turned half round about the edge's middle. */
function acrossFrom(side: FitSide): FitSide {
  const length = side.neutralPositions[3];
  const neutralPositions = side.neutralPositions.map((x, i) => (i % 3 === 0 ? length - x : i % 3 === 1 ? -x : x));
  return { ...side, edge: { ...side.edge, side: 1, reversed: true }, neutralPositions };
}

function seamOf({ edge, piece }: FitSide, kind: FoamSeam['kind']): FoamSeam {
  return {
    id: edge.seam,
    letter: edge.letter,
    kind,
    layer: piece.layer,
    pieces: [piece.id, piece.id],
    allowanceMm: edge.allowanceMm,
    lapSide: 0,
    lengthMm: [100, 100],
    tracedLengthMm: [100, 100],
    trueLengthMm: 100,
    differenceMm: 0,
    worstSlipMm: 0,
    worstMisalignmentMm: 0,
    bevelDeg: { min: 0, max: 0 },
  };
}

function fitOf(choice: SquareChoice, mate: SquareChoice = choice, kind: FoamSeam['kind'] = 'butt', allowanceMm = 0) {
  const plain = squareSide(choice);
  const side = { ...plain, edge: { ...plain.edge, allowanceMm } };
  return measureSeam(seamOf(side, kind), [side, acrossFrom(squareSide(mate))], MOST_SHARE);
}

describe('two flat plates put together', () => {
  it('close where both are cut on the line', () => {
    const fit = fitOf({});
    expect([fit.worstGapMm, fit.worstOverlapMm, fit.worstSlipMm, fit.worstStepMm]).toEqual([0, 0, 0, 0]);
    expect([...fit.samples.stationMm]).toEqual([0, 0, 50, 100, 100]);
  });

  it('tell face and back apart, what one has too much taking off what the other lacks', () => {
    const fit = fitOf({ faceOutMm: -0.5, backOutMm: 1 }, { faceOutMm: -0.25, backOutMm: -0.25 });
    for (const gap of fit.samples.faceGapMm) expect(gap).toBeCloseTo(0.75, 12);
    for (const gap of fit.samples.backGapMm) expect(gap).toBeCloseTo(-0.75, 12);
    expect(fit.worstGapMm).toBeCloseTo(0.75, 12);
    expect(fit.worstOverlapMm).toBeCloseTo(0.75, 12);
  });

  it('slip where one side would have to be pulled further than the foam gives', () => {
    const long = squareSide({ spaceMm: 110 });
    const mate = acrossFrom(long);
    // The mate is as long as the seam.
    const even = { ...mate, edge: { ...mate.edge, stationMm: Float64Array.of(0, 110) } };
    const fit = measureSeam(seamOf(long, 'butt'), [long, even], MOST_SHARE);
    expect(fit.worstSlipMm).toBeCloseTo(2, 12);
    expect(fit.worstGapMm).toBeCloseTo(0, 12);
  });
});

describe('a lapped edge', () => {
  it('is compared at its lap line, not at the edge of its allowance', () => {
    const fit = fitOf({ faceOutMm: 12, backOutMm: 12 }, {}, 'lap', 12);
    expect(Math.max(fit.worstGapMm, fit.worstOverlapMm)).toBe(0);
  });

  it('shows what its allowance lacks', () => {
    const fit = fitOf({ faceOutMm: 10, backOutMm: 10 }, {}, 'lap', 12);
    expect(fit.worstGapMm).toBeCloseTo(2, 12);
    expect(fit.worstOverlapMm).toBe(0);
  });
});
