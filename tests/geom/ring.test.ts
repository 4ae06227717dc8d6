import { describe, expect, it } from 'vitest';
import { boxOfPoints, joinBoxes, ringArea, ringLength, ringOfPoints } from '../../src/geom/ring.ts';

describe('ringOfPoints', () => {
  it('takes points in the order of their numbers', () => {
    expect([...ringOfPoints([0, 1, 2, 3, 4, 5, 6, 7], Uint32Array.of(3, 0, 2))]).toEqual([6, 7, 0, 1, 4, 5]);
    expect(ringOfPoints([1, 2], new Uint32Array())).toHaveLength(0);
  });
});

describe('ringArea', () => {
  it('is positive counter-clockwise and negative clockwise', () => {
    // By hand: the box of 7 by 5 less the four triangles that the ring leaves free, 6 + 3 + 5 + 1.5.
    expect(ringArea([2, 1, 8, 3, 6, 6, 1, 4])).toBe(19.5);
    expect(ringArea([1, 4, 6, 6, 8, 3, 2, 1])).toBe(-19.5);
  });

  it('keeps its digits far from the origin', () => {
    const far = [0, 0, 3, 0, 3, 2, 0, 2].map((value, i) => value / 8 + (i % 2 === 0 ? 2 ** 40 : -(2 ** 41)));
    expect(ringArea(far)).toBe(6 / 64);
  });

  it('is nothing for no ring, a point and a line', () => {
    expect([[], [3, 4], [3, 4, 9, 1]].map(ringArea)).toEqual([0, 0, 0]);
  });
});

describe('ringLength', () => {
  it('goes all the way round, back to the first point', () => {
    expect(ringLength([1, 2, 4, 6, 4, 2])).toBe(5 + 4 + 3);
    expect(ringLength([1, 2, 4, 6])).toBe(10);
    expect(ringLength([])).toBe(0);
  });
});

describe('boxes', () => {
  it('stand closely round points', () => {
    expect(boxOfPoints([3, -7, -2, 5, 1, 11])).toEqual({ minX: -2, minY: -7, maxX: 3, maxY: 11 });
    expect(boxOfPoints([4, 9])).toEqual({ minX: 4, minY: 9, maxX: 4, maxY: 9 });
  });

  it('are inside out round nothing, so that joining them changes nothing', () => {
    const none = boxOfPoints([]);
    expect(none).toEqual({ minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity });
    const box = { minX: 1, minY: 2, maxX: 3, maxY: 5 };
    expect(joinBoxes(none, box)).toEqual(box);
  });

  it('stand closely round two boxes, whichever reaches farther on a side', () => {
    const [a, b] = [
      { minX: -1, minY: 4, maxX: 6, maxY: 9 },
      { minX: 2, minY: -3, maxX: 8, maxY: 5 },
    ];
    const both = { minX: -1, minY: -3, maxX: 8, maxY: 9 };
    expect([joinBoxes(a, b), joinBoxes(b, a)]).toEqual([both, both]);
  });
});
