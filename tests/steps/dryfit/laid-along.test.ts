import { describe, expect, it } from 'vitest';
import { laidAlong } from '../../../src/steps/dryfit/laid-along.ts';
import { squareSide, type SquareChoice } from './square-side.ts';

/** How far ahead of its model point a share of the edge lies when foam gives by at most 8 %. */
const ahead = (choice: SquareChoice, f: number): number =>
  laidAlong(squareSide(choice), Float64Array.from([0, choice.spaceMm ?? 100]), 0.08)(0, f);

describe('an edge laid along its seam', () => {
  it('is pulled where its forming needs it and the foam allows', () => {
    expect(ahead({ spaceMm: 107 }, 1)).toBe(0);
    expect(ahead({ spaceMm: 93 }, 1)).toBe(0);
  });

  it('falls short by what the foam does not give', () => {
    expect(ahead({ spaceMm: 110 }, 0.5)).toBeCloseTo(-1, 12);
    expect(ahead({ spaceMm: 110 }, 1)).toBeCloseTo(-2, 12);
  });

  it('stands over by what the foam cannot gather', () => {
    expect(ahead({ spaceMm: 90 }, 1)).toBeCloseTo(2, 12);
  });

  it('starts anew at each match mark, where what was missing before is still seen', () => {
    const choice = { spaceMm: 110, marksMm: [25, 50] };
    expect(ahead(choice, 0.25)).toBeCloseTo(-0.5, 12);
    expect(ahead(choice, 0.5)).toBeCloseTo(-0.5, 12);
    expect(ahead(choice, 0.6)).toBeCloseTo(-0.2, 12);
    expect(ahead(choice, 1)).toBeCloseTo(-1, 12);
  });
});
