import { describe, expect, it } from 'vitest';
import type { FitSamples } from '../../src/model/dry-fit.ts';
import { fitStretches } from '../../src/viewport/fit-lines.ts';

const samples = (gaps: readonly number[]): FitSamples => ({
  stationMm: new Float64Array(gaps.length),
  points: new Float64Array(3 * gaps.length),
  faceGapMm: Float64Array.from(gaps),
  backGapMm: new Float64Array(gaps.length),
});

describe('what was measured along a seam, to be coloured', () => {
  it('comes in two stretches for each edge, with the figures of its start, middle and end', () => {
    const measured = samples([1, 2, 3, 4, 5, 6]);
    expect(fitStretches(measured, measured.faceGapMm, 2)).toEqual([
      { edge: 0, from: 0, to: 0.5, figures: [1, 2] },
      { edge: 0, from: 0.5, to: 1, figures: [2, 3] },
      { edge: 1, from: 0, to: 0.5, figures: [4, 5] },
      { edge: 1, from: 0.5, to: 1, figures: [5, 6] },
    ]);
  });

  it('leaves out the corners at the ends of an open seam', () => {
    const measured = samples([9, 1, 2, 3, 9]);
    expect(fitStretches(measured, measured.faceGapMm, 1).map(({ figures }) => figures)).toEqual([
      [1, 2],
      [2, 3],
    ]);
  });

  it('says nothing where seam and figures are not of one result', () => {
    const measured = samples([1, 2, 3]);
    expect(fitStretches(measured, measured.faceGapMm, 2)).toEqual([]);
  });
});
