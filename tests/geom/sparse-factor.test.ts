import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random.ts';
import { graphOfPairs } from '../../src/geom/sparse-graph.ts';
import { SparseFactor } from '../../src/geom/sparse-factor.ts';
import { planFactor } from '../../src/geom/sparse-plan.ts';
import { denseOf, fillValues, gridPairs, residual, springMatrix, type TestMatrix } from './sparse-support.ts';

function solved(matrix: TestMatrix, rightSide: Float64Array, order?: Int32Array): Float64Array {
  const factor = new SparseFactor(planFactor(matrix.graph, order), matrix.blockSize);
  fillValues(factor, matrix);
  expect(factor.factor()).toBe(true);
  const x = rightSide.slice();
  factor.solve(x);
  return x;
}

const noise = (count: number, rand: () => number): Float64Array =>
  Float64Array.from({ length: count }, () => rand() - 0.5);

describe('SparseFactor', () => {
  it.each([
    [4, 1],
    [4, 2],
    [25, 1],
    [25, 2],
    [80, 1],
    [80, 2],
  ] as const)(
    'solves springs on a grid of side %i, blocks of %i, to a relative residual under 1e-12',
    (n, blockSize) => {
      const rand = seededRandom(n);
      const matrix = springMatrix(n * n, gridPairs(n), blockSize, 0.01, rand);
      const b = noise(2 * n * n, rand);
      expect(residual(matrix, solved(matrix, b), b)).toBeLessThan(1e-12);
    },
  );

  it('agrees with dense elimination on random graphs, in pieces too, in any order', () => {
    const rand = seededRandom(5);
    for (let trial = 0; trial < 60; trial += 1) {
      const size = 1 + Math.floor(40 * rand());
      const pairs = Array.from({ length: 2 * Math.floor(2 * size * rand()) }, () => Math.floor(rand() * size));
      const matrix = springMatrix(size, pairs, trial % 2 === 0 ? 1 : 2, 0.1, rand);
      const shuffled = Int32Array.from({ length: size }, (_, i) => i).sort(
        (a, b) => Math.sin(a * trial) - Math.sin(b * trial) || a - b,
      );
      const b = noise(2 * size, rand);
      const x = solved(matrix, b, trial % 3 === 0 ? shuffled : undefined);
      const dense = denseOf(matrix);
      if (matrix.blockSize === 2) {
        denseSolve(dense, [...b]).forEach((value, i) => expect(x[i]).toBeCloseTo(value, 9));
        continue;
      }
      for (const side of [0, 1]) {
        const own = denseSolve(
          dense,
          [...b].filter((_, i) => i % 2 === side),
        );
        own.forEach((value, i) => expect(x[2 * i + side]).toBeCloseTo(value, 9));
      }
    }
  });

  it('takes new numbers on the same plan as often as wanted', () => {
    const rand = seededRandom(8);
    const plan = planFactor(graphOfPairs(900, gridPairs(30)));
    const factor = new SparseFactor(plan, 2);
    for (let round = 0; round < 4; round += 1) {
      const matrix = springMatrix(900, gridPairs(30), 2, 10 ** -round, rand);
      fillValues(factor, matrix);
      expect(factor.factor()).toBe(true);
      const b = noise(1800, rand);
      const x = b.slice();
      factor.solve(x);
      expect(residual(matrix, x, b)).toBeLessThan(1e-12);
    }
  });

  it('solves with the vector kernel as without, to the last bit', () => {
    const rand = seededRandom(9);
    const matrix = springMatrix(900, gridPairs(30), 2, 0.1, rand);
    const b = noise(1800, rand);
    const withKernel = solved(matrix, b);
    const platform = globalThis.WebAssembly;
    // @ts-expect-error: a platform without it
    globalThis.WebAssembly = undefined;
    try {
      expect([...solved(matrix, b)]).toEqual([...withKernel]);
    } finally {
      globalThis.WebAssembly = platform;
    }
  });

  it('pauses while it factors a large matrix, with the same result, and stops when called off', async () => {
    const rand = seededRandom(6);
    const matrix = springMatrix(3600, gridPairs(60), 2, 0.1, rand);
    const factor = new SparseFactor(planFactor(matrix.graph), 2);
    fillValues(factor, matrix);
    let pauses = 0;
    expect(await factor.factorWithPauses(() => void (pauses += 1))).toBe(true);
    expect(pauses).toBeGreaterThan(1);
    const b = noise(7200, rand);
    const x = b.slice();
    factor.solve(x);
    expect([...x]).toEqual([...solved(matrix, b)]);
    const callOff = (): undefined => {
      throw new Error('called off');
    };
    await expect(factor.factorWithPauses(callOff)).rejects.toThrow('called off');
    expect(factor.factor()).toBe(true);
  });

  it('says when a matrix is not positive definite, and takes the next one', () => {
    const factor = new SparseFactor(planFactor(graphOfPairs(2, [0, 1])), 1);
    const two = (diagonal: number, other: number): TestMatrix => ({
      graph: factor.plan.blocks.count > 0 ? graphOfPairs(2, [0, 1]) : graphOfPairs(0, []),
      blockSize: 1,
      blocks: [
        { v: 0, w: 0, block: [diagonal] },
        { v: 1, w: 1, block: [diagonal] },
        { v: 0, w: 1, block: [other] },
      ],
    });
    fillValues(factor, two(1, 2));
    expect(factor.factor()).toBe(false);
    fillValues(factor, two(Number.NaN, 0));
    expect(factor.factor()).toBe(false);
    fillValues(factor, two(2, 1));
    expect(factor.factor()).toBe(true);
    const x = Float64Array.from([3, 6, 3, 6]);
    factor.solve(x);
    [1, 2, 1, 2].forEach((value, i) => expect(x[i]).toBeCloseTo(value, 14));
  });
});

/** Gaussian elimination with a full matrix, the plain way. */
function denseSolve(matrix: number[][], b: number[]): number[] {
  const n = b.length;
  const m = matrix.map((row, i) => [...row, b[i]]);
  for (let i = 0; i < n; i += 1) {
    for (let r = i + 1; r < n; r += 1) {
      const share = m[r][i] / m[i][i];
      for (let c = i; c <= n; c += 1) m[r][c] -= share * m[i][c];
    }
  }
  const x = Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i -= 1) {
    x[i] = m[i][n];
    for (let c = i + 1; c < n; c += 1) x[i] -= m[i][c] * x[c];
    x[i] /= m[i][i];
  }
  return x;
}
