import { describe, expect, it } from 'vitest';
import { solveSquare } from '../../src/geom/solve-square.ts';
import { forAll } from '../support/for-all.ts';
import { near } from '../support/near-numbers.ts';

describe('solveSquare', () => {
  it('solves what has nought on its diagonal', () => {
    // x = 2, y = -1, z = 3.
    const rows = [
      [0, 2, 1],
      [1, -2, -3],
      [-1, 1, 2],
    ];
    expect(solveSquare(rows, [1, -5, 3])).toEqual(near([2, -1, 3]));
    expect(rows).toEqual([
      [0, 2, 1],
      [1, -2, -3],
      [-1, 1, 2],
    ]);
    expect(solveSquare([[4]], [10])).toEqual([2.5]);
    expect(solveSquare([], [])).toEqual([]);
  });

  it('is not led astray by a pivot next to nothing', () => {
    // The example of every textbook: taken as it stands, the first row would give x = 0.
    expect(
      solveSquare(
        [
          [1e-20, 1],
          [1, 1],
        ],
        [1, 2],
      ),
    ).toEqual(near([1, 1]));
    expect(
      solveSquare(
        [
          [1e-20, 1],
          [-1, 1],
        ],
        [1, 0],
      ),
    ).toEqual(near([1, 1]));
    expect(
      solveSquare(
        [
          [-1, 1],
          [1e-20, 1],
        ],
        [0, 1],
      ),
    ).toEqual(near([1, 1]));
  });

  it('says so where the rows do not settle it', () => {
    expect(
      solveSquare(
        [
          [1, 2],
          [2, 4],
        ],
        [3, 6],
      ),
    ).toBeNull();
    expect(
      solveSquare(
        [
          [0, 0],
          [0, 0],
        ],
        [0, 0],
      ),
    ).toBeNull();
    expect(solveSquare([[NaN]], [1])).toBeNull();
    expect(
      solveSquare(
        [
          [1, 1],
          [1, 1 + 1e-12],
        ],
        [1, 2],
      ),
    ).toBeNull();
    expect(
      solveSquare(
        [
          [1000, 1000],
          [1000, 1000 + 1e-9],
        ],
        [1, 2],
      ),
    ).toBeNull();
  });

  it('holds a pivot against the greatest number of all', () => {
    const beside = (small: number) =>
      solveSquare(
        [
          [1e9, 0],
          [0, small],
        ],
        [1e9, small],
      );
    expect([beside(0.005), beside(0.02)]).toEqual([null, near([1, 1])]);
  });

  it('goes by shares, not by size', () => {
    expect(
      solveSquare(
        [
          [1, 1],
          [1, 1 + 1e-10],
        ],
        [2, 2 + 1e-10],
      ),
    ).toEqual(near([1, 1], 4));
    expect(
      solveSquare(
        [
          [3e-20, 1e-20],
          [1e-20, 2e-20],
        ],
        [5e-20, 5e-20],
      ),
    ).toEqual(near([1, 2]));
  });

  it('finds what the right side was made from', async () => {
    const gen = (rand: () => number) => {
      const n = 1 + Math.floor(6 * rand());
      const rows = Array.from({ length: n }, () => Array.from({ length: n }, () => 2 * rand() - 1));
      return { rows, x: Array.from({ length: n }, () => 2 * rand() - 1) };
    };
    await forAll(gen, ({ rows, x }) => {
      const right = rows.map((row) => row.reduce((sum, value, j) => sum + value * x[j], 0));
      expect(solveSquare(rows, right)).toEqual(near(x, 8));
    });
  });
});
