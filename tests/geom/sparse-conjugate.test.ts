import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random.ts';
import { ConjugateSearch } from '../../src/geom/sparse-conjugate.ts';
import { SparseFactor } from '../../src/geom/sparse-factor.ts';
import { multiplyBlocks } from '../../src/geom/sparse-multiply.ts';
import { planFactor } from '../../src/geom/sparse-plan.ts';
import { fillValues, gridPairs, residual, springMatrix, type TestMatrix } from './sparse-support.ts';

const N = 20;

function setUp(seed: number) {
  const rand = seededRandom(seed);
  const matrix = springMatrix(N * N, gridPairs(N), 2, 1, rand);
  const factor = new SparseFactor(planFactor(matrix.graph), 2);
  fillValues(factor, matrix);
  factor.factor();
  const b = Float64Array.from({ length: 2 * N * N }, () => rand() - 0.5);
  return { rand, matrix, factor, b, x: new Float64Array(b.length), search: new ConjugateSearch(factor) };
}

/** The same springs, every node held a little more or less. */
function changed(matrix: TestMatrix, by: (k: number) => number): TestMatrix {
  const blocks = matrix.blocks.map(({ v, w, block }, k) => {
    const share = v === w ? 1 + by(k) : 1;
    return { v, w, block: block.map((value) => value * share) };
  });
  return { ...matrix, blocks };
}

function solved(factor: SparseFactor, b: Float64Array): Float64Array {
  const x = b.slice();
  factor.solve(x);
  return x;
}

const dot = (a: Float64Array, b: Float64Array): number => a.reduce((sum, value, i) => sum + value * b[i], 0);

describe('ConjugateSearch', () => {
  it('needs one round where the matrix is the one that was factored', () => {
    const { factor, search, matrix, b, x } = setUp(1);
    fillValues(factor, matrix);
    expect(search.solve(b, x, 1e-20, 2)).toMatchObject({ positive: true });
    expect(residual(matrix, x, b)).toBeLessThan(1e-12);
  });

  it('solves a matrix near by in a few rounds, and tells what is left', () => {
    const { factor, search, matrix, b, x, rand } = setUp(2);
    const near = changed(matrix, () => 0.1 * rand());
    fillValues(factor, near);
    const { left } = search.solve(b, x, 1e-20, 25);
    expect(left).toBeLessThan(1e-14);
    expect(residual(near, x, b)).toBeLessThan(1e-6);
    const rough = search.solve(b, x, 1e-20, 2);
    expect(rough.left).toBeGreaterThan(left);
    expect(rough.left).toBeLessThan(1e-2);
  });

  it('stops when little is left, whatever share that is', () => {
    const { factor, search, matrix, b, x, rand } = setUp(6);
    fillValues(
      factor,
      changed(matrix, () => 0.1 * rand()),
    );
    const exact = search.solve(b, x, 1e-20, 4);
    expect(exact.reached).toBe(false);
    const all = dot(b, solved(factor, b));
    const early = search.solve(b, x, 1e-20, 25, 1e-6 * all);
    expect(early.reached).toBe(true);
    expect(early.left).toBeLessThanOrEqual(1e-6);
    expect(early.left).toBeGreaterThan(exact.left);
  });

  it('stops where the matrix is not positive, with what it found before', () => {
    const { factor, search, matrix, b, x } = setUp(3);
    fillValues(
      factor,
      changed(matrix, (k) => (k % 5 === 0 ? -3 : 0)),
    );
    const { positive } = search.solve(b, x, 1e-20, 50);
    expect(positive).toBe(false);
    expect(x.every(Number.isFinite)).toBe(true);
  });

  it('gives 0 for nothing to solve', () => {
    const { search, b, x } = setUp(4);
    expect(
      search.solve(
        b.map(() => 0),
        x,
        1e-6,
        5,
      ),
    ).toEqual({ left: 0, reached: true, positive: true });
    expect(x.every((value) => value === 0)).toBe(true);
  });
});

describe('multiplyBlocks', () => {
  it('is what a solve undoes', () => {
    const { factor, matrix, b } = setUp(5);
    fillValues(factor, matrix);
    const x = b.slice();
    factor.solve(x);
    const back = new Float64Array(x.length);
    multiplyBlocks(factor.plan, factor.values, x, back);
    back.forEach((value, i) => expect(value).toBeCloseTo(b[i], 10));
  });
});
