import { describe, expect, it } from 'vitest';
import { isInRings } from '../../src/geom/in-rings.ts';

describe('isInRings', () => {
  const outer = [0, 0, 10, 0, 10, 10, 0, 10];
  const hole = [3, 3, 3, 7, 7, 7, 7, 3];

  it('is true inside a ring, whichever way it runs, and false outside', () => {
    for (const ring of [outer, [0, 0, 0, 10, 10, 10, 10, 0]]) {
      for (const x of [0.1, 5, 9.9]) expect(isInRings([ring], x, 5)).toBe(true);
      for (const [x, y] of [
        [-0.1, 5],
        [10.1, 5],
        [5, -1],
        [5, 11],
      ])
        expect(isInRings([ring], x, y)).toBe(false);
    }
  });

  it('is false in a hole, and true again on what lies in the hole', () => {
    expect(isInRings([outer, hole], 5, 5)).toBe(false);
    expect(isInRings([outer, hole], 1, 5)).toBe(true);
    expect(isInRings([outer, hole, [4, 4, 6, 4, 6, 6, 4, 6]], 5, 5)).toBe(true);
  });

  it('counts a corner at the height of the place once', () => {
    const rhomb = [0, 0, 5, -5, 10, 0, 5, 5];
    expect(isInRings([rhomb], 5, 0)).toBe(true);
    expect(isInRings([rhomb], -1, 0)).toBe(false);
  });

  it('is false where there is no ring', () => {
    expect(isInRings([], 0, 0)).toBe(false);
  });
});
