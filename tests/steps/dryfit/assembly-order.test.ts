import { describe, expect, it } from 'vitest';
import { assemblyOrder } from '../../../src/steps/dryfit/assembly-order.ts';

const piece = (id: string, areaMm2: number) => ({ id, areaMm2 });
const seam = (a: string, b: string, lengthMm: number) => ({ pieces: [a, b], lengthMm });

describe('the order of putting together', () => {
  it('begins with the largest and goes on where most is held', () => {
    const pieces = [piece('a', 10), piece('b', 50), piece('c', 20), piece('d', 30)];
    // b first; c shares 9 with it; then a shares 4 + 4 with both, more than the 7 of d.
    const seams = [seam('b', 'c', 9), seam('b', 'd', 7), seam('a', 'b', 4), seam('a', 'c', 4)];
    expect(assemblyOrder(pieces, seams)).toEqual([2, 0, 1, 3]);
  });

  it('begins anew with the largest left where nothing is joined, and passes over darts and open edges', () => {
    const pieces = [piece('a', 10), piece('b', 50), piece('c', 20)];
    const seams = [seam('a', 'a', 99), { pieces: ['c'], lengthMm: 99 }, seam('a', 'b', 1)];
    expect(assemblyOrder(pieces, seams)).toEqual([1, 0, 2]);
  });
});
