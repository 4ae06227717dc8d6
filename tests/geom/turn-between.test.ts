import { expect, it } from 'vitest';
import { movePoints } from '../../src/geom/turn-and-move.ts';
import { turnBetween } from '../../src/geom/turn-between.ts';

it('finds the turn that was made', () => {
  const points = [3, 1, -2, 5, 0.5, -4];
  for (const turnRad of [0, 0.3, -2.5, 3.1]) {
    expect(turnBetween(points, movePoints(points, { x: 0, y: 0, turnRad }))).toBeCloseTo(turnRad, 12);
  }
  expect(turnBetween([], [])).toBe(0);
});
