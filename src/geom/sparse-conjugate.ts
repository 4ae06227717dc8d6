import { runAtOnce, type Stepwise } from '../base/stepwise.ts';
import type { SparseFactor } from './sparse-factor.ts';
import { multiplyBlocks } from './sparse-multiply.ts';

/** Numbers from which a product with the matrix is a stretch of its own. */
const LARGE = 100_000;

/** How a search for the solution of A x = b ended. */
export interface ConjugateEnd {
  /** What is left of the right-hand side, squared and in the metric of the factor, as a share of the beginning; 1 = nothing gained. */
  readonly left: number;
  /** True where no more is left than was asked. */
  readonly reached: boolean;
  /** False where A turned out not to be positive along a direction; what was found before that stands. */
  readonly positive: boolean;
}

/**
 * Conjugate gradients with the factor of a matrix near by as a guide (Hestenes and Stiefel 1952; stopped at negative curvature after
 * Steihaug 1983): A is what lies in `factor.values` now, the guide is what was factored last. A few rounds replace a factorisation
 * where the matrix has changed only a little. Takes its room once and allocates nothing in a search.
 */
export class ConjugateSearch {
  readonly #factor: SparseFactor;
  readonly #residual: Float64Array;
  readonly #guided: Float64Array;
  readonly #along: Float64Array;
  readonly #product: Float64Array;

  constructor(factor: SparseFactor) {
    const count = 2 * factor.plan.size;
    this.#factor = factor;
    this.#residual = new Float64Array(count);
    this.#guided = new Float64Array(count);
    this.#along = new Float64Array(count);
    this.#product = new Float64Array(count);
  }

  /**
   * @param rightSide  b, two numbers per node.
   * @param x          overwritten with the solution.
   * @param enough     stop when `left` is at or below this.
   * @param mostRounds products with A at most.
   * @param little     stop as well when what is left, not as a share, is at or below this.
   */
  solve(rightSide: Float64Array, x: Float64Array, enough: number, mostRounds: number, little = 0): ConjugateEnd {
    return runAtOnce(this.solveSteps(rightSide, x, enough, mostRounds, little));
  }

  /** The same in stretches. */
  *solveSteps(
    rightSide: Float64Array,
    x: Float64Array,
    enough: number,
    mostRounds: number,
    little = 0,
  ): Stepwise<ConjugateEnd> {
    const [residual, guided, along, product] = [this.#residual, this.#guided, this.#along, this.#product];
    const isLarge = x.length > LARGE;
    x.fill(0);
    residual.set(rightSide);
    guided.set(residual);
    yield* this.#factor.solveSteps(guided);
    along.set(guided);
    let size = dot(residual, guided);
    const first = size;
    if (!(first > 0)) return { left: 0, reached: true, positive: true };
    for (let round = 0; round < mostRounds; round += 1) {
      if (isLarge) yield;
      multiplyBlocks(this.#factor.plan, this.#factor.values, along, product);
      const curvature = dot(along, product);
      if (!(curvature > 0)) return { left: size / first, reached: false, positive: false };
      const step = size / curvature;
      takeStep(x, residual, along, product, step);
      guided.set(residual);
      yield* this.#factor.solveSteps(guided);
      const next = dot(residual, guided);
      if (next <= Math.max(enough * first, little)) return { left: next / first, reached: true, positive: true };
      const turn = next / size;
      turnTowards(along, guided, turn);
      size = next;
    }
    return { left: size / first, reached: false, positive: true };
  }
}

function takeStep(
  x: Float64Array,
  residual: Float64Array,
  along: Float64Array,
  product: Float64Array,
  step: number,
): void {
  for (let i = 0; i < x.length; i += 1) {
    x[i] += step * along[i];
    residual[i] -= step * product[i];
  }
}

function turnTowards(along: Float64Array, guided: Float64Array, turn: number): void {
  for (let i = 0; i < along.length; i += 1) along[i] = guided[i] + turn * along[i];
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i += 1) sum += a[i] * b[i];
  return sum;
}
