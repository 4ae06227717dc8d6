import { describe, expect, it } from 'vitest';
import { ringArea } from '../../src/geom/ring.ts';
import { meetingOfWhole, restOfWhole, unionOfWhole } from '../../src/geom/whole-union.ts';

const block = (x: number, y: number, w: number, h: number): Float64Array =>
  Float64Array.of(x, y, x + w, y, x + w, y + h, x, y + h);
const gap = (x: number, y: number, w: number, h: number): Float64Array =>
  Float64Array.of(x, y, x, y + h, x + w, y + h, x + w, y);

/** Rings that can be compared: each begins with its least corner, the largest area first. */
function plain(rings: readonly Float64Array[]): number[][] {
  return [...rings]
    .sort((a, b) => ringArea(b) - ringArea(a))
    .map((ring) => {
      const corners = Array.from({ length: ring.length / 2 }, (_, i) => [ring[2 * i], ring[2 * i + 1]]);
      const least = corners.reduce((best, p, i) => {
        const q = corners[best];
        return p[0] < q[0] || (p[0] === q[0] && p[1] < q[1]) ? i : best;
      }, 0);
      return [...corners.slice(least), ...corners.slice(0, least)].flat();
    });
}

describe('whole numbers', () => {
  const [a, b] = [block(0, 0, 10, 6), block(7, 2, 8, 9)];

  it('covers what either covers', () => {
    expect(plain(unionOfWhole([a, b]))).toEqual([[0, 0, 10, 0, 10, 2, 15, 2, 15, 11, 7, 11, 7, 6, 0, 6]]);
  });

  it('joins what stands side by side, without corners on a straight line', () => {
    expect(plain(unionOfWhole([block(0, 0, 10, 6), block(10, 0, 4, 6)]))).toEqual([[...block(0, 0, 14, 6)]]);
    expect(plain(unionOfWhole([Float64Array.of(0, 0, 5, 0, 10, 0, 10, 6, 0, 6)]))).toEqual([[...a]]);
  });

  it('keeps a hole, clockwise, and goes by how often a place is gone round', () => {
    const hole = gap(2, 2, 3, 1);
    expect(plain(unionOfWhole([a, hole]))).toEqual([[...a], [...hole]]);
    // Covered once more, the hole is closed; gone round clockwise alone, nothing is covered.
    expect(plain(unionOfWhole([a, hole, block(1, 1, 5, 3)]))).toEqual([[...a]]);
    expect(unionOfWhole([hole])).toEqual([]);
    expect(unionOfWhole([])).toEqual([]);
  });

  it('tells what two have in common', () => {
    expect(plain(meetingOfWhole([a], [b]))).toEqual([[7, 2, 10, 2, 10, 6, 7, 6]]);
    expect(plain(meetingOfWhole([a, gap(8, 3, 1, 2)], [b]))).toEqual([
      [7, 2, 10, 2, 10, 6, 7, 6],
      [8, 3, 8, 5, 9, 5, 9, 3],
    ]);
    expect(meetingOfWhole([a], [block(20, 20, 1, 1)])).toEqual([]);
  });

  it('tells what of the first is not of the second', () => {
    expect(plain(restOfWhole([a], [b]))).toEqual([[0, 0, 10, 0, 10, 2, 7, 2, 7, 6, 0, 6]]);
    expect(plain(restOfWhole([b], [a]))).toEqual([[7, 6, 10, 6, 10, 2, 15, 2, 15, 11, 7, 11]]);
    expect(plain(restOfWhole([a], [block(2, 2, 3, 1)]))).toEqual([[...a], [...gap(2, 2, 3, 1)]]);
    expect(restOfWhole([a], [block(-1, -1, 20, 20)])).toEqual([]);
  });
});
