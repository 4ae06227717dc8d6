import { describe, expect, it } from 'vitest';
import { countInPlace, placesBy, shareOff } from '../../src/viewport/taken-apart.ts';

describe('pieces taken apart', () => {
  it('come off last first, all of them in the end', () => {
    const at = (share: number): number[] => [0, 1, 2, 3].map((place) => shareOff(place, 4, share));
    expect(at(0)).toEqual([0, 0, 0, 0]);
    // The last one is done at 0.35 of the way; each that was put on before it sets off a third of the rest later.
    expect(at(0.35)[3]).toBe(1);
    expect(at(0.65)[0]).toBe(0);
    expect(at(0.5)).toEqual(at(0.5).toSorted((a, b) => a - b));
    expect(at(1)).toEqual([1, 1, 1, 1]);
    expect(shareOff(0, 1, 0.5)).toBe(0.5);
  });

  it('never jump, however many there are', () => {
    for (const count of [1, 2, 3, 7, 40])
      for (let share = 0; share < 1; share += 0.002)
        for (const place of [0, count - 1]) {
          const step = shareOff(place, count, share + 0.002) - shareOff(place, count, share);
          expect(step).toBeGreaterThanOrEqual(0);
          // Half as fast again in the middle as on the whole, on a way that takes 0.35 of the slider.
          expect(step).toBeLessThan((1.5 * 0.002) / 0.35 + 1e-9);
        }
  });

  it('are counted while they are in place', () => {
    expect([0, 0.2, 0.5, 0.7, 1].map((share) => countInPlace(4, share))).toEqual([4, 3, 2, 1, 0]);
    expect(countInPlace(0, 0)).toBe(0);
  });

  it('have places by when they are glued, alike ones as they come', () => {
    expect(placesBy([3, 1, 1, 0])).toEqual([3, 1, 2, 0]);
  });
});
