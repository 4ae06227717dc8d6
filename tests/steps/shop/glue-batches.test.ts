import { describe, expect, it } from 'vitest';
import { checkGlue, GLUES, type Glue } from '../../../src/model/glues.ts';
import { batchTimes, longestStretchMm, stretchesOf } from '../../../src/steps/shop/glue-batches.ts';

/** 15 minutes to dry, 30 to be joined, figures that are easy to add. */
const glue: Glue = {
  id: 'test',
  name: 'test',
  waitMin: 15,
  openMin: 30,
  brushMmPerMin: 500,
  joinMmPerMin: 250,
  alignMinPerSeam: 1,
  cureH: 72,
  coverageM2PerL: 5,
  cautions: [],
};

describe('a batch', () => {
  it('is brushed, waited for and joined', () => {
    // 250 mm: two faces of 250 at 500 are 1 min; 500 mm are 2 more. Joined from 1 + 15; 1 + 1 min, then 1 + 2.
    expect(batchTimes(glue, [{ lengthMm: 250 }, { lengthMm: 500 }])).toEqual({
      brushedMin: 3,
      joinFromMin: 16,
      joinedMin: 21,
    });
  });

  it('is too long where an edge would wait beyond its open time', () => {
    const loads = Array.from({ length: 7 }, () => ({ lengthMm: 250 }));
    // The first is joined from 16 on and each takes 2 min: the seventh is shut at 30, 24 min after it was brushed.
    expect(batchTimes(glue, loads)?.joinedMin).toBe(30);
    expect(batchTimes({ ...glue, openMin: 23 }, loads)).toBeNull();
    expect(batchTimes({ ...glue, openMin: 24 }, loads)).not.toBeNull();
  });

  it('holds the longest stretch and no longer one', () => {
    // 14 min left for l / 250 + l / 250.
    expect(longestStretchMm(glue)).toBeCloseTo(1750, 9);
    expect(batchTimes(glue, [{ lengthMm: 1750 }])?.joinedMin).toBeCloseTo(30, 9);
    expect(batchTimes(glue, [{ lengthMm: 1751 }])).toBeNull();
  });
});

it('a seam that is too long is parted at its match marks, else where it must be', () => {
  expect(stretchesOf(300, [100, 200], 400)).toEqual([[0, 300]]);
  expect(stretchesOf(300, [70, 140, 210], 150)).toEqual([
    [0, 140],
    [140, 210],
    [210, 300],
  ]);
  expect(stretchesOf(300, [], 120)).toEqual([
    [0, 120],
    [120, 240],
    [240, 300],
  ]);
});

it('glues that could not be used are refused', () => {
  expect(GLUES.length).toBeGreaterThan(0);
  expect(() => checkGlue({ ...glue, openMin: 16 })).toThrow(RangeError);
  expect(() => checkGlue({ ...glue, brushMmPerMin: 0 })).toThrow(RangeError);
});
