import { describe, expect, it } from 'vitest';
import { orient3d, orient3dOfSides, turnOfSides } from '../../src/geom/predicates.ts';
import { forAll } from '../support/for-all.ts';

describe('orient3d', () => {
  const corners = [0, 0, 0, 1, 0, 0, 0, 1, 0];
  it('counts the side from which the corners run counter-clockwise as positive, six times the volume', () => {
    expect(orient3d(corners, 0, 3, 6, [0.25, 0.25, 2], 0)).toBeCloseTo(2, 12);
    expect(orient3d(corners, 0, 3, 6, [0.25, 0.25, -2], 0)).toBeCloseTo(-2, 12);
    expect(orient3dOfSides(corners, 0, 3, [0, 1, 0, 0, 0, 5], 0, 3)).toBe(5);
  });
  it('tells the last digit', () => {
    const up = 2 ** -500;
    expect(orient3d(corners, 0, 3, 6, [1e-3, 1e-3, up], 0)).toBeGreaterThan(0);
    expect(orient3d([0.1, 0.2, 0.3, 7.7, 0.2, 0.3, 0.1, 9.9, 0.3], 0, 3, 6, [1e9, -1e9, 0.3], 0)).toBeCloseTo(0, 300);
  });
});

describe('turnOfSides', () => {
  it('is 1 to the left, -1 to the right, 0 along one line', () => {
    expect(turnOfSides(5, 5, 6, 5, 0, 0, 0, 1)).toBe(1);
    expect(turnOfSides(5, 5, 6, 5, 0, 0, 0, -1)).toBe(-1);
    expect(turnOfSides(5, 5, 7, 9, 1, 1, 2, 3)).toBe(0);
  });
  it('is right where plain arithmetic is lost: ways that differ in one last digit far from the origin', () =>
    forAll(
      (rand) => ({
        far: 1e9 * (1 + Math.floor(8 * rand())),
        run: 1 + Math.floor(1000 * rand()),
        rise: 1 + Math.floor(1000 * rand()),
      }),
      ({ far, run, rise }) => {
        // All of these are whole numbers under 2^53 and so exact; the second way rises by a 2^-20th more.
        expect(turnOfSides(far, 0, far + run, rise, 0, far, run, far + rise)).toBe(0);
        expect(turnOfSides(far, 0, far + run, rise, 0, far, run, far + rise + 2 ** -20)).toBe(1);
        expect(turnOfSides(far, 0, far + run, rise, 0, far, run, far + rise - 2 ** -20)).toBe(-1);
      },
    ));
  it('takes the smallest and the largest numbers there are', () => {
    const least = 2 ** -1074;
    expect(turnOfSides(0, 0, least, 0, 0, 0, 0, least)).toBe(1);
    expect(turnOfSides(0, 0, -1e-200, 0, 0, 0, 0, 1e-200)).toBe(-1);
    expect(() => turnOfSides(NaN, 0, 1, 0, 0, 0, 0, 1)).toThrow(RangeError);
  });
});
