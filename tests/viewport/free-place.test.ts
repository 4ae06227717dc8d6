import { describe, expect, it } from 'vitest';
import type { FreePlaces } from '../../src/model/free-places.ts';
import type { PieceId } from '../../src/base/ids.ts';
import { inTheWay, isFree, nearestTouch, stepTo } from '../../src/viewport/free-place.ts';

const box = (x0: number, y0: number, x1: number, y1: number): number[] => [x0, y0, x1, y0, x1, y1, x0, y1];

/** A room of 100 x 60 with a piece over 40..60 across, all the way up but for the lowest 10. */
const PLACES: FreePlaces = {
  free: [Float64Array.of(0, 0, 100, 0, 100, 60, 60, 60, 60, 10, 40, 10, 40, 60, 0, 60)],
  blocks: [{ piece: 'brow' as PieceId, copy: 1, rings: [Float64Array.from(box(40, 10, 60, 200))] }],
};

describe('where a piece may be put', () => {
  it('is told, and what is in the way elsewhere', () => {
    expect(isFree(PLACES, { x: 20, y: 30 })).toBe(true);
    expect(inTheWay(PLACES, { x: 20, y: 30 })).toBeNull();
    expect(inTheWay(PLACES, { x: 50, y: 30 })).toMatchObject({ piece: 'brow', copy: 1 });
    expect(inTheWay(PLACES, { x: -3, y: 30 })).toBe('edge');
  });

  it('is found nearest to a wish, where it touches', () => {
    expect(nearestTouch(PLACES, { x: 43, y: 30 })).toMatchObject({ x: 40, y: 30, awayMm: 3 });
    expect(nearestTouch(PLACES, { x: 58, y: 13 })).toMatchObject({ x: 60, y: 13 });
    expect(nearestTouch(PLACES, { x: 50, y: 11 })).toMatchObject({ x: 50, y: 10 });
    expect(nearestTouch({ free: [], blocks: [] }, { x: 0, y: 0 })).toBeNull();
  });

  it('is reached in steps: as far as it goes, then past what is in the way, never out of the sheet', () => {
    const right = { x: 5, y: 0 };
    expect(stepTo(PLACES, { x: 20, y: 30 }, right, true)).toMatchObject({ x: 25, y: 30 });
    expect(stepTo(PLACES, { x: 38, y: 30 }, right, true)).toMatchObject({ x: 40, y: 30 });
    expect(stepTo(PLACES, { x: 40, y: 30 }, right, true)).toMatchObject({ x: 60, y: 30 });
    expect(stepTo(PLACES, { x: 40, y: 30 }, right, false)).toBeNull();
    expect(stepTo(PLACES, { x: 98, y: 30 }, right, true)).toMatchObject({ x: 100, y: 30 });
    expect(stepTo(PLACES, { x: 100, y: 30 }, right, true)).toBeNull();
    expect(stepTo(PLACES, { x: 60, y: 30 }, { x: -5, y: 0 }, true)).toMatchObject({ x: 40, y: 30 });
    expect(stepTo(PLACES, { x: 50, y: 5 }, { x: 0, y: 5 }, true)).toMatchObject({ x: 50, y: 10 });
  });

  it('is reached along what it touches, also from a hair within it', () => {
    const up = { x: 0, y: 5 };
    for (const x of [0, 40, 40.2, -0.1]) {
      const to = stepTo(PLACES, { x, y: 30 }, up, false);
      expect(to?.y).toBeCloseTo(35, 9);
      expect(Math.abs((to?.x ?? 0) - x)).toBeLessThan(0.25);
    }
    expect(stepTo(PLACES, { x: 45, y: 30 }, up, false)).toBeNull();
  });
});
