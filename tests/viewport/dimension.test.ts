import { describe, expect, it } from 'vitest';
import { dimensionsOf } from '../../src/viewport/dimension.ts';

describe('dimension lines round a cut', () => {
  // 120 wide, 80 high, its lower left corner at -20 10; figures 10 mm high.
  const [breadth, height] = dimensionsOf([-20, 10, 100, 90], 10);
  const lines = (strokes: readonly number[]) =>
    Array.from({ length: strokes.length / 4 }, (_, i) => strokes.slice(4 * i, 4 * i + 4));

  it('tell breadth and height', () => {
    expect([breadth.mm, height.mm]).toEqual([120, 80]);
  });

  it('run from corner to corner, under what is cut and to the left of it', () => {
    expect(lines(breadth.strokes).at(-1)).toEqual([-20, -9, 100, -9]);
    expect(lines(height.strokes).at(-1)).toEqual([-39, 10, -39, 90]);
  });

  it('have two arrow strokes at each end that point outward, and lead to the corners', () => {
    const [lead, ...arrow] = lines(breadth.strokes);
    expect(lead).toEqual([-20, 5, -20, -13]);
    expect(arrow.slice(0, 2).map((stroke) => stroke.map((x) => Math.round(10 * x) / 10))).toEqual([
      [-20, -9, -11, -6.2],
      [-20, -9, -11, -11.8],
    ]);
  });

  it('carry their figures in the middle, read from below and from the right', () => {
    expect([breadth.at.map((x) => Math.round(x)), breadth.along]).toEqual([
      [40, -6],
      [1, 0],
    ]);
    expect([height.at.map((x) => Math.round(x)), height.along]).toEqual([
      [-42, 50],
      [0, 1],
    ]);
  });
});
