import { describe, expect, it } from 'vitest';
import { moveReach } from '../../src/app/move-reach.ts';

/** Eleven corners 10 mm apart along x, and one 40 mm to the side of the middle one. */
const positions = [...Array.from({ length: 11 }, (_, i) => [10 * i, 0, 0]).flat(), 50, 40, 0];
const chain = { vertices: Uint32Array.from({ length: 11 }, (_, i) => i) };

describe('how much of a seam comes along', () => {
  it('is one edge to each side for a small move, and at least a twelfth of the seam', () => {
    expect(moveReach(positions, chain, 5, 5)).toEqual([4, 6]);
  });

  it('grows with the way it is dragged: one and a half times as far to each side', () => {
    // To a neighbour 20 mm away: 30 mm to each side.
    expect(moveReach(positions, chain, 5, 7)).toEqual([2, 8]);
  });

  it('ends where the seam ends', () => {
    expect(moveReach(positions, chain, 5, 11)).toEqual([0, 10]);
    expect(moveReach(positions, chain, 1, 3)).toEqual([0, 4]);
  });
});
