import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random.ts';
import { SparseFactor } from '../../src/geom/sparse-factor.ts';
import { multiplyBlocks } from '../../src/geom/sparse-multiply.ts';
import { planFactor } from '../../src/geom/sparse-plan.ts';
import { near } from '../support/near-numbers.ts';
import { denseOf, fillValues, gridPairs, springMatrix, type TestMatrix } from './sparse-support.ts';
import { graphOfPairs } from '../../src/geom/sparse-graph.ts';

function product(matrix: TestMatrix, x: Float64Array): number[] {
  const factor = new SparseFactor(planFactor(matrix.graph), 2);
  fillValues(factor, matrix);
  const out = new Float64Array(x.length).fill(1e9);
  multiplyBlocks(factor.plan, factor.values, x, out);
  return [...out];
}

describe('multiplyBlocks', () => {
  it('multiplies as the whole matrix does', () => {
    const rand = seededRandom(21);
    const matrix = springMatrix(25, gridPairs(5), 2, 0.3, rand);
    const x = Float64Array.from({ length: 50 }, () => rand() - 0.5);
    const whole = denseOf(matrix).map((row) => row.reduce((sum, value, j) => sum + value * x[j], 0));
    expect(product(matrix, x)).toEqual(near(whole));
  });

  it('takes blocks that are not alike across their diagonal', () => {
    const blocks = [
      { v: 0, w: 0, block: [2, 3, 3, 5] },
      { v: 1, w: 1, block: [7, 11, 11, 13] },
      { v: 0, w: 1, block: [17, 19, 23, 29] },
    ];
    const matrix: TestMatrix = { graph: graphOfPairs(2, [0, 1]), blockSize: 2, blocks };
    expect(product(matrix, Float64Array.of(1, 10, 100, 1000))).toEqual([
      2 + 30 + 1700 + 19_000,
      3 + 50 + 2300 + 29_000,
      17 + 230 + 700 + 11_000,
      19 + 290 + 1100 + 13_000,
    ]);
  });
});
