import { describe, expect, it } from 'vitest';
import { numbersOf, rowOf } from './handbook/cases.ts';
import { singularValues, spaceArea, spreadOf, symmetricDirichlet } from './recompute/measure.mjs';
import { countOverlaps } from './recompute/overlaps.mjs';

/** The measuring rod is measured first: what the recomputation rests on, against hand-worked and published figures. */
describe('own formulas of the recomputation', () => {
  const flat = [
    [1, 1],
    [4, 1],
    [2, 5],
  ] as const;

  it('give the handbook’s measures of a 1.10 x 0.95 stretch, wherever the triangle lies', () => {
    const { expected } = numbersOf('O1');
    expect(rowOf('O1', 'inputs', 'J')).toHaveLength(2);
    // The plane of the space triangle is spanned by two unit vectors at right angles.
    const [u, v] = [
      [2 / 3, 2 / 3, 1 / 3],
      [-2 / 3, 1 / 3, 2 / 3],
    ];
    const put = ([x, y]: readonly number[]): number[] => u.map((a, i) => 7 + 1.1 * x * a + 0.95 * y * v[i]);
    const [a, b] = singularValues(flat, [put(flat[0]), put(flat[1]), put(flat[2])]);
    expect(a).toBeCloseTo(expected.sigma1, 12);
    expect(b).toBeCloseTo(expected.sigma2, 12);
    expect(a * b).toBeCloseTo(expected.area_ratio, 12);
    expect(100 * (a - 1)).toBeCloseTo(expected.max_stretch_percent, 10);
    expect(symmetricDirichlet(a, b)).toBeCloseTo(expected.symmetric_dirichlet, 5);
  });

  it('keep the area of a needle', () => {
    // Sides 1e5, 1e5 and 1e-5: area 1e5 * 1e-5 / 2.
    const needle = [
      [0, 0, 0],
      [1e5, 0, 0],
      [1e5, 1e-5, 0],
    ] as const;
    expect(spaceArea(needle)).toBeCloseTo(0.5, 10);
  });

  it('take the smallest value that 99 % of the area does not exceed', () => {
    const values = Array.from({ length: 200 }, (_, i) => (i * 77) % 200);
    expect(
      spreadOf(
        values,
        values.map(() => 1),
      ),
    ).toEqual({ max: 199, p99: 197, mean: 99.5 });
    expect(spreadOf([5, 1, 9], [98, 1, 1])).toEqual({ max: 9, p99: 5, mean: 5 });
    expect(spreadOf([5, 1, 9], [98, 0.5, 1.5]).p99).toBe(9);
  });

  it('count triangles that share ground and none that only touch', () => {
    const square = [
      [
        [0, 0],
        [2, 0],
        [2, 2],
      ],
      [
        [0, 0],
        [2, 2],
        [0, 2],
      ],
    ];
    expect(countOverlaps(square, 1e-9)).toBe(0);
    const third = [
      [1, 0.5],
      [3, 0.5],
      [3, 1],
    ];
    expect(countOverlaps([...square, third], 1e-9)).toBe(1);
    expect(countOverlaps([...square, third.map(([x, y]) => [x + 1, y])], 1e-9)).toBe(0);
    expect(countOverlaps([...square, third.map(([x, y]) => [x - 0.9, y])], 1e-9)).toBe(2);
  });
});
