import { describe, expect, it } from 'vitest';
import type { Lattice } from '../../../src/steps/tile/lattice.ts';
import { visibleCell } from '../../../src/steps/tile/visible-cell.ts';

/** Tiles of 190 × 265 mm, of which neighbours show 10 mm across and 15 up. */
const LATTICE: Lattice = {
  columns: 3,
  rows: 3,
  tileWidthMm: 190,
  tileHeightMm: 265,
  stepXMm: 180,
  stepYMm: 250,
};

/** Sides of the cell to a thousandth of a mm: what a tile shows more for rounding is far less. */
function cellOf(printed: readonly number[], tile: number): readonly number[] {
  const isPrinted = Array.from({ length: 9 }, (_, i) => printed.includes(i));
  const { minX, maxX, minY, maxY } = visibleCell(LATTICE, isPrinted, tile);
  return [minX, maxX, minY, maxY].map((mm) => Math.round(mm * 1000) / 1000 + 0);
}

describe('what of a tile is seen', () => {
  //   6 7 8
  //   3 4 5
  //   0 1 2
  it('ends 3 mm inside every joint where all neighbours are printed', () => {
    // Tile 4 begins at 180, 250; its right neighbour is laid over it from 360 on, the one above from 500.
    expect(cellOf([1, 3, 4, 5, 7], 4)).toEqual([183, 357, 253, 497]);
  });

  it('is all of it where none is', () => {
    expect(cellOf([4], 4)).toEqual([180, 370, 250, 515]);
  });

  it.each([
    ['left', 3, [183, 370, 250, 515]],
    ['right', 5, [180, 357, 250, 515]],
    ['below', 1, [180, 370, 253, 515]],
    ['above', 7, [180, 370, 250, 497]],
  ])('gives way to one printed neighbour: %s', (_, neighbour, cell) => {
    expect(cellOf([4, neighbour], 4)).toEqual(cell);
  });

  it('runs on to the rim of the block', () => {
    expect(cellOf([0, 1, 3], 0)).toEqual([0, 177, 0, 247]);
    expect(cellOf([5, 7, 8], 8)).toEqual([363, 550, 503, 765]);
  });
});
