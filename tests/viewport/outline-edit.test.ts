import { describe, expect, it } from 'vitest';
import {
  faultOfOutline,
  gridStepMm,
  withCornerAfter,
  withCornerAt,
  withoutCorner,
} from '../../src/viewport/outline-edit.ts';

const SQUARE = [0, 0, 100, 0, 100, 100, 0, 100];

describe('an outline drawn by hand', () => {
  it('has its corners moved, added half way to the next, and taken out', () => {
    expect(withCornerAt(SQUARE, 1, 120, 5)).toEqual([0, 0, 120, 5, 100, 100, 0, 100]);
    expect(withCornerAfter(SQUARE, 0)).toEqual([0, 0, 50, 0, 100, 0, 100, 100, 0, 100]);
    // After the last one: half way to the first.
    expect(withCornerAfter(SQUARE, 3)).toEqual([...SQUARE, 0, 50]);
    expect(withoutCorner(SQUARE, 2)).toEqual([0, 0, 100, 0, 0, 100]);
  });

  it('is told what keeps it from being one, whichever way round it runs', () => {
    const sheet = { widthMm: 100, heightMm: 100 };
    const turned = [0, 100, 100, 100, 100, 0, 0, 0];
    for (const points of [SQUARE, turned]) {
      expect(faultOfOutline(points, null)).toBeNull();
      expect(faultOfOutline(points, sheet)).toBeNull();
    }
    expect(faultOfOutline([0, 0, 100, 0], null)).toBe('few');
    expect(faultOfOutline([0, 0, 100, 100, 100, 0, 0, 90], null)).toBe('crossing');
    expect(faultOfOutline([0, 0, 100, 0, 50, 0.001], null)).toBe('flat');
    expect(faultOfOutline(withCornerAt(SQUARE, 2, 101, 100), sheet)).toBe('outside');
    expect(faultOfOutline(withCornerAt(SQUARE, 2, 101, 100), null)).toBeNull();
  });

  it('lies on a grid of some twenty lines, round in the unit that is read', () => {
    expect([90, 400, 2000].map((size) => gridStepMm(size, 'mm'))).toEqual([5, 50, 100]);
    expect([90, 400, 2000].map((size) => Math.round((100 * gridStepMm(size, 'in')) / 25.4))).toEqual([25, 100, 600]);
  });
});
