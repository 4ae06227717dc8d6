import { describe, expect, it } from 'vitest';
import { boxOfPoints } from '../../src/geom/ring.ts';
import { moveBoxTo, movePoint, movePoints } from '../../src/geom/turn-and-move.ts';

describe('movePoints', () => {
  it('turns counter-clockwise, then moves; quarter turns are exact', () => {
    expect(Array.from(movePoints([1, 0, 0, 2], { x: 10, y: 20, turnRad: Math.PI / 2 }))).toEqual([10, 21, 8, 20]);
    expect(movePoint({ x: 3, y: 4 }, { x: 0, y: 0, turnRad: Math.PI })).toEqual({ x: -3, y: -4 });
    const turned = movePoint({ x: 1, y: 0 }, { x: 0, y: 0, turnRad: Math.PI / 6 });
    expect(turned.x).toBeCloseTo(Math.sqrt(3) / 2, 12);
    expect(turned.y).toBeCloseTo(0.5, 12);
  });
});

describe('moveBoxTo', () => {
  it('brings the lower left corner of the box, turned or not, to the place', () => {
    const corners = [-3, 5, 17, 5, 17, 12, -3, 12];
    const box = boxOfPoints(corners);
    expect(boxOfPoints(movePoints(corners, moveBoxTo(box, false, 100, 200)))).toEqual({
      minX: 100,
      minY: 200,
      maxX: 120,
      maxY: 207,
    });
    expect(boxOfPoints(movePoints(corners, moveBoxTo(box, true, 100, 200)))).toEqual({
      minX: 100,
      minY: 200,
      maxX: 107,
      maxY: 220,
    });
  });
});
