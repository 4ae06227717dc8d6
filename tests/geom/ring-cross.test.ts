import { describe, expect, it } from 'vitest';
import { doesRingCross } from '../../src/geom/ring-cross.ts';
import { forAll } from '../support/for-all.ts';

describe('doesRingCross', () => {
  it('tells a ring that crosses itself, whichever way it runs and wherever it begins', () => {
    const bow = [0, 0, 10, 8, 10, 0, 0, 7];
    const plain = [0, 0, 10, 0, 10, 8, 0, 7];
    for (let shift = 0; shift < 8; shift += 2) {
      const from = (ring: readonly number[]): number[] => [...ring.slice(shift), ...ring.slice(0, shift)];
      const back = (ring: readonly number[]): number[] =>
        [0, 1, 2, 3].flatMap((i) => from(ring).slice(6 - 2 * i, 8 - 2 * i));
      expect([from(bow), back(bow)].map(doesRingCross)).toEqual([true, true]);
      expect([from(plain), back(plain)].map(doesRingCross)).toEqual([false, false]);
      const upright = (ring: readonly number[]): number[] => from(ring).map((_, i, all) => all[i ^ 1]);
      expect([upright(bow), upright(plain)].map(doesRingCross)).toEqual([true, false]);
    }
  });

  it('does not count touching', () => {
    // Out to a hole and back along the same line, as earcut wants it.
    expect(doesRingCross([0, 0, 9, 0, 9, 9, 0, 9, 0, 0, 3, 3, 3, 6, 6, 6, 6, 3, 3, 3])).toBe(false);
    // A corner that stands on another side.
    expect(doesRingCross([0, 0, 10, 0, 10, 9, 5, 0, 0, 9])).toBe(false);
    expect(doesRingCross([0, 0, 10, 0, 10, 9, 5, -0.001, 0, 9])).toBe(true);
    expect(doesRingCross([])).toBe(false);
    expect(doesRingCross([1, 2, 3, 4])).toBe(false);
  });

  it('finds the one crossing among many sides', async () => {
    const gen = (rand: () => number) => ({ sides: 8 + Math.floor(30 * rand()), at: rand(), turn: 7 * rand() });
    await forAll(gen, ({ sides, at, turn }) => {
      const corners = Array.from({ length: sides }, (_, i) => {
        const angle = turn + (2 * Math.PI * i) / sides;
        return [20 * Math.cos(angle), 20 * Math.sin(angle)];
      });
      expect(doesRingCross(corners.flat())).toBe(false);
      const i = Math.floor(at * sides);
      const j = (i + 1) % sides;
      [corners[i], corners[j]] = [corners[j], corners[i]];
      expect(doesRingCross(corners.flat())).toBe(true);
    });
  });
});
