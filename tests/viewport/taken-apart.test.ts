import { describe, expect, it } from 'vitest';
import { countInPlace, shareOff } from '../../src/viewport/taken-apart.ts';

describe('a prop taken apart', () => {
  it('loses the last piece first and keeps the first', () => {
    const at = (share: number): number[] => [0, 1, 2, 3].map((order) => shareOff(order, 4, share));
    expect(at(0)).toEqual([0, 0, 0, 0]);
    expect(at(1 / 3)).toEqual([0, 0, 0, 1]);
    expect(at(0.5)).toEqual([0, 0, 0.5, 1]);
    expect(at(1)).toEqual([0, 1, 1, 1]);
  });

  it('counts what is in place', () => {
    expect([0, 0.1, 0.4, 0.7, 1].map((share) => countInPlace(4, share))).toEqual([4, 4, 3, 2, 1]);
    expect(countInPlace(1, 1)).toBe(1);
    expect(countInPlace(0, 0)).toBe(0);
  });
});
