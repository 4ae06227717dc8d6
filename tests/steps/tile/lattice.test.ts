import { describe, expect, it } from 'vitest';
import {
  neighbourOf,
  oneTile,
  placeName,
  SIDES,
  tileBox,
  tilesAlong,
  tilesTouched,
  type Lattice,
} from '../../../src/steps/tile/lattice.ts';
import { forAll } from '../../support/for-all.ts';

/** A4 upright with margins of 10 mm, three wide and two high: 10 mm shown twice across, 15 up. */
const LATTICE: Lattice = {
  columns: 3,
  rows: 2,
  tileWidthMm: 190,
  tileHeightMm: 265,
  stepXMm: 180,
  stepYMm: 250,
};

/** A tile shows so little more than itself, mm, that no printer draws it. */
const HAIR_MM = 1e-6;

describe('tiles along a length', () => {
  it.each([
    [0, 1],
    [12, 1],
    [190, 1],
    [190.001, 2],
    [300, 2],
    [370, 2],
    [370.1, 3],
    [550, 3],
    [551, 4],
  ])('%d mm take %i of 190 mm that show 10 mm twice', (length, tiles) => {
    expect(tilesAlong(length, 190, 180)).toBe(tiles);
  });

  it('are no more for what is longer by rounding alone', () => {
    expect(tilesAlong(190 + 1e-10, 190, 180)).toBe(1);
    expect(tilesAlong(370 + 1e-10, 190, 180)).toBe(2);
  });

  it('cover the length, and one fewer would not', () =>
    forAll(
      (rand) => ({ length: 1 + 3000 * rand(), tile: 60 + 400 * rand(), overlap: 30 * rand() }),
      ({ length, tile, overlap }) => {
        const step = tile - overlap;
        const count = tilesAlong(length, tile, step);
        expect((count - 1) * step + tile).toBeGreaterThanOrEqual(length - HAIR_MM);
        if (count > 1) expect((count - 2) * step + tile).toBeLessThan(length);
      },
    ));
});

describe('what a tile shows', () => {
  it('begins as many steps from the lower left as it is columns and rows away', () => {
    const box = tileBox(LATTICE, 5);
    expect(box.minX).toBeCloseTo(360, 6);
    expect(box.minY).toBeCloseTo(250, 6);
    expect(box.maxX).toBeCloseTo(550, 6);
    expect(box.maxY).toBeCloseTo(515, 6);
  });

  it('is wider than the tile by a hair on every side', () => {
    const { minX, minY, maxX, maxY } = tileBox(LATTICE, 1);
    for (const more of [180 - minX, -minY, maxX - 370, maxY - 265]) {
      expect(more).toBeGreaterThan(0);
      expect(more).toBeLessThan(HAIR_MM);
    }
  });

  it('is the whole block where a page stands by itself', () => {
    expect(oneTile(190, 84)).toEqual({
      columns: 1,
      rows: 1,
      tileWidthMm: 190,
      tileHeightMm: 84,
      stepXMm: 190,
      stepYMm: 84,
    });
  });
});

describe('neighbours', () => {
  //   3 4 5
  //   0 1 2
  it.each([
    [0, [-1, 1, -1, 3]],
    [1, [0, 2, -1, 4]],
    [2, [1, -1, -1, 5]],
    [3, [-1, 4, 0, -1]],
    [4, [3, 5, 1, -1]],
    [5, [4, -1, 2, -1]],
  ])('of tile %i of three by two are %j: left, right, below, above', (tile, tiles) => {
    expect(SIDES).toEqual(['left', 'right', 'below', 'above']);
    expect(SIDES.map((side) => neighbourOf(LATTICE, tile, side))).toEqual(tiles);
  });

  it('of a page by itself are none', () => {
    expect(SIDES.map((side) => neighbourOf(oneTile(190, 265), 0, side))).toEqual([-1, -1, -1, -1]);
  });
});

describe('names of places', () => {
  it('are a letter for the column and a number for the row, from the lower left', () => {
    expect([0, 1, 2, 3, 4, 5].map((tile) => placeName(LATTICE, tile))).toEqual(['A1', 'B1', 'C1', 'A2', 'B2', 'C2']);
  });

  it('go on after Z as columns of a table do', () => {
    expect(placeName({ ...LATTICE, columns: 28 }, 28 + 26)).toBe('AA2');
  });
});

describe('tiles that a range touches', () => {
  it.each([
    ['inside the first', 100, 120, [0, 0]],
    ['just under where the second begins', 20, 179.9, [0, 0]],
    ['where the second begins', 20, 180, [0, 1]],
    ['in the strip that two show', 183, 187, [0, 1]],
    ['from where the first ends', 190, 200, [0, 1]],
    ['just beyond the first', 190.1, 200, [1, 1]],
    ['over all', 5, 540, [0, 2]],
    ['in the last alone', 371, 549, [2, 2]],
    ['out to both sides', -50, 900, [0, 2]],
  ])('%s', (_, min, max, tiles) => {
    expect(tilesTouched(min, max, 190, 180, 3)).toEqual(tiles);
  });

  it('are none outside: the first stands behind the last', () => {
    expect(tilesTouched(600, 700, 190, 180, 3)).toEqual([3, 2]);
    expect(tilesTouched(-50, -20, 190, 180, 3)).toEqual([0, -1]);
  });

  it('hold a line that lies on their edge but for rounding', () => {
    expect(tilesTouched(190 + 1e-10, 200, 190, 180, 3)).toEqual([0, 1]);
    expect(tilesTouched(20, 180 - 1e-10, 190, 180, 3)).toEqual([0, 1]);
  });

  it('are those whose boxes meet the range', () =>
    forAll(
      (rand) => {
        const min = -100 + 900 * rand();
        return { min, max: min + 300 * rand() };
      },
      ({ min, max }) => {
        const row = { ...LATTICE, rows: 1 };
        const touched = [0, 1, 2].filter((tile) => {
          const { minX, maxX } = tileBox(row, tile);
          return minX <= max && maxX >= min;
        });
        const [first, last] = tilesTouched(min, max, 190, 180, 3);
        expect([0, 1, 2].filter((tile) => tile >= first && tile <= last)).toEqual(touched);
      },
    ));
});
