import { describe, expect, it } from 'vitest';
import type { FitSamples } from '../../src/model/dry-fit.ts';
import { dashes, fitStretches } from '../../src/viewport/fit-lines.ts';

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

it('what is pressed together is dashed: alike, with the figures of where they lie, and one at least', () => {
  const stretch = { edge: 2, from: 0.5, to: 1, figures: [-1, -2] } as const;
  const [first, second, ...more] = dashes(stretch, 18);
  expect(more).toEqual([]);
  expect([first.edge, first.to - first.from, second.from - first.to]).toEqual([
    2,
    expect.closeTo(5 / 36),
    expect.closeTo(4 / 36),
  ]);
  expect(first.figures[0]).toBeCloseTo(-1 - 2 / 18);
  expect(second.to).toBeLessThan(1);
  expect(dashes(stretch, 0.1)).toHaveLength(1);
});
