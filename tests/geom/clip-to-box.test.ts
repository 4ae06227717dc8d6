import { describe, expect, it } from 'vitest';
import { lineInBox, polygonInBox, segmentInBox } from '../../src/geom/clip-to-box.ts';
import { ringArea, ringLength } from '../../src/geom/ring.ts';
import { forAll } from '../support/for-all.ts';

const BOX = { minX: 0, minY: 0, maxX: 10, maxY: 10 };
const runsOf = (points: number[], closed: boolean): number[][] =>
  lineInBox(points, closed, BOX).map((run) => Array.from(run.points));

describe('segmentInBox', () => {
  it('gives the span inside, as fractions of the way', () => {
    expect(segmentInBox(-10, 5, 10, 5, BOX)).toEqual({ from: 0.5, to: 1 });
    expect(segmentInBox(2, 2, 3, 3, BOX)).toEqual({ from: 0, to: 1 });
    expect(segmentInBox(-5, 5, 5, 15, BOX)).toEqual({ from: 0.5, to: 0.5 });
    expect(segmentInBox(-5, 6, 5, 16, BOX)).toBeNull();
    expect(segmentInBox(11, 0, 11, 10, BOX)).toBeNull();
  });
});

describe('lineInBox', () => {
  it('keeps a line that is inside as it is, closed or open', () => {
    expect(lineInBox([1, 1, 9, 1, 9, 9], true, BOX)).toEqual([
      { points: Float64Array.of(1, 1, 9, 1, 9, 9), closed: true },
    ]);
    expect(lineInBox([], true, BOX)).toEqual([]);
  });

  it('gives each crossing exactly and one run for each visit', () => {
    // A square that sticks out on the right: one run, not cut in two where the ring begins.
    expect(runsOf([5, 2, 15, 2, 15, 8, 5, 8], true)).toEqual([[10, 8, 5, 8, 5, 2, 10, 2]]);
    expect(runsOf([-1, 1, 11, 1, 11, 3, -1, 3], false)).toEqual([
      [0, 1, 10, 1],
      [10, 3, 0, 3],
    ]);
  });

  it('leaves out what only touches, and what lies outside', () => {
    expect(runsOf([-5, 5, 5, 15, 5, 20], false)).toEqual([]);
    expect(runsOf([20, 20, 30, 20], false)).toEqual([]);
  });

  it('loses and invents no length: four boxes side by side hold the whole ring', () =>
    forAll(
      (rand) => Float64Array.from({ length: 24 }, () => 20 * rand()),
      (ring) => {
        let total = 0;
        for (const [x, y] of [
          [0, 0],
          [10, 0],
          [0, 10],
          [10, 10],
        ]) {
          const box = { minX: x, minY: y, maxX: x + 10, maxY: y + 10 };
          for (const run of lineInBox(ring, true, box)) {
            const last = run.points.length - 2;
            const back = Math.hypot(run.points[0] - run.points[last], run.points[1] - run.points[last + 1]);
            total += ringLength(run.points) - (run.closed ? 0 : back);
          }
        }
        expect(total).toBeCloseTo(ringLength(ring), 8);
      },
    ));
});

describe('polygonInBox', () => {
  it('cuts an arrow head off at the side', () => {
    expect(Array.from(polygonInBox([8, 4, 12, 5, 8, 6], BOX))).toEqual([8, 4, 10, 4.5, 10, 5.5, 8, 6]);
    expect(polygonInBox([12, 4, 14, 5, 12, 6], BOX).length).toBe(0);
    expect(Array.from(polygonInBox([1, 1, 2, 1, 2, 2], BOX))).toEqual([1, 1, 2, 1, 2, 2]);
  });

  it('parts a triangle into areas that add up', () =>
    forAll(
      (rand) => Float64Array.from({ length: 6 }, () => 20 * rand()),
      (triangle) => {
        let total = 0;
        for (const [x, y] of [
          [0, 0],
          [10, 0],
          [0, 10],
          [10, 10],
        ])
          total += ringArea(polygonInBox(triangle, { minX: x, minY: y, maxX: x + 10, maxY: y + 10 }));
        expect(total).toBeCloseTo(ringArea(triangle), 8);
      },
    ));
});
