import { describe, expect, it } from 'vitest';
import { eigen3 } from '../../src/geom/symmetric-3x3.ts';
import { forAll } from '../support/for-all.ts';
import { near } from '../support/near-numbers.ts';

const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, x, i) => sum + x * b[i], 0);
/** A direction and its opposite are one: the one whose greatest part is positive. */
const ahead = (v: readonly number[]): number[] => {
  const most = v.reduce((best, x) => (Math.abs(x) > Math.abs(best) ? x : best), 0);
  return v.map((x) => x * Math.sign(most));
};

describe('eigen3', () => {
  it('finds values and directions of a matrix put together from them', () => {
    // 405 u u' + 162 v v' - 243 w w' with u = 1, 8, -4, v = -4, 4, 7 and w = 8, 1, 4, each of length 9.
    const { values, vectors } = eigen3([-155, -16, -172, 349, -116, 130]);
    expect(values).toEqual(near([405, 162, -243], 9));
    expect(ahead(vectors[0])).toEqual(near([1, 8, -4].map((x) => x / 9)));
    expect(ahead(vectors[1])).toEqual(near([-4, 4, 7].map((x) => x / 9)));
    expect(ahead(vectors[2])).toEqual(near([8, 1, 4].map((x) => x / 9)));
  });

  it('finds those of three masses on springs', () => {
    // Second differences: 2 - 2 cos(k pi / 4) (any textbook of vibrations).
    const { values, vectors } = eigen3([2, -1, 0, 2, -1, 2]);
    expect(values).toEqual(near([2 + Math.SQRT2, 2, 2 - Math.SQRT2]));
    expect(ahead(vectors[0])).toEqual(near([-0.5, Math.SQRT1_2, -0.5]));
    expect(ahead(vectors[2])).toEqual(near([0.5, Math.SQRT1_2, 0.5]));
  });

  it('puts the largest first and turns nothing where nothing is to turn', () => {
    eigen3([1, 2, 3, 4, 5, 6]);
    expect(eigen3([1, 0, 0, 3, 0, 2])).toEqual({
      values: [3, 2, 1],
      vectors: [
        [0, 1, 0],
        [0, 0, 1],
        [1, 0, 0],
      ],
    });
    expect(eigen3([0, 0, 0, 0, 0, 0]).values).toEqual([0, 0, 0]);
    expect(eigen3([4, 0, 0, 4, 0, 4]).values).toEqual([4, 4, 4]);
  });

  it('gives three directions square to each other that the matrix only makes longer', async () => {
    const gen = (rand: () => number) => Array.from({ length: 6 }, () => (2 * rand() - 1) * 10 ** (3 * rand()));
    await forAll(gen, (m) => {
      const rows = [
        [m[0], m[1], m[2]],
        [m[1], m[3], m[4]],
        [m[2], m[4], m[5]],
      ];
      const { values, vectors } = eigen3(m);
      expect([...values].sort((x, y) => y - x)).toEqual(values);
      for (let i = 0; i < 3; i += 1) {
        expect(rows.map((row) => dot(row, vectors[i]))).toEqual(
          near(
            vectors[i].map((x) => x * values[i]),
            9,
          ),
        );
        expect(vectors.map((other) => dot(other, vectors[i]))).toEqual(near([0, 1, 2].map((j) => (i === j ? 1 : 0))));
      }
    });
  });
});
