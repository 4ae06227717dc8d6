import { describe, expect, it } from 'vitest';
import { crossingsOf } from '../../src/geom/line-crossings.ts';
import { near } from '../support/near-numbers.ts';

const rising = (values: readonly number[]): number[] => [...values].sort((a, b) => a - b);
const block = Float64Array.of(2, 1, 10, 1, 10, 7, 2, 7);

describe('crossingsOf', () => {
  it('tells how far along the line it enters and leaves', () => {
    expect(rising(crossingsOf([block], { x: 5, y: 3 }, { x: 1, y: 0 }))).toEqual(near([-3, 5]));
    expect(rising(crossingsOf([block], { x: 5, y: 3 }, { x: 0, y: -1 }))).toEqual(near([-4, 2]));
    // Slanted, with 0.8 of the way up or to the left: sides 4 below and 2 above, then 3 to the right and 2 above.
    expect(rising(crossingsOf([block], { x: 7, y: 5 }, { x: 0.6, y: 0.8 }))).toEqual(near([-5, 2.5]));
    expect(rising(crossingsOf([block], { x: 7, y: 5 }, { x: -0.8, y: 0.6 }))).toEqual(near([-3.75, 10 / 3]));
  });

  it('goes through holes and through several rings', () => {
    const hole = Float64Array.of(4, 2, 4, 6, 8, 6, 8, 2);
    const far = Float64Array.of(20, 0, 30, 0, 30, 50, 20, 50);
    expect(rising(crossingsOf([block, hole, far], { x: 0, y: 3 }, { x: 1, y: 0 }))).toEqual(
      near([2, 4, 8, 10, 20, 30]),
    );
  });

  it('crosses once at a corner that it passes through and not at one that it touches', () => {
    const tip = Float64Array.of(0, 0, 6, -2, 6, 2);
    expect(rising(crossingsOf([tip], { x: -1, y: 0 }, { x: 1, y: 0 }))).toEqual(near([1, 7]));
    const touched = Float64Array.of(0, -5, 3, 0, 6, -5);
    expect(crossingsOf([touched], { x: -1, y: 0 }, { x: 1, y: 0 })).toEqual([]);
    expect(crossingsOf([block], { x: 0, y: 9 }, { x: 1, y: 0 })).toEqual([]);
    expect(crossingsOf([], { x: 0, y: 9 }, { x: 1, y: 0 })).toEqual([]);
  });
});
