import { graphOfPairs, type SparseGraph } from '../../src/geom/sparse-graph.ts';
import type { SparseFactor } from '../../src/geom/sparse-factor.ts';
import { entryBetween } from '../../src/geom/sparse-plan.ts';

/** A symmetric matrix of small square blocks, given entry by entry (each pair once) for tests. */
export interface TestMatrix {
  readonly graph: SparseGraph;
  readonly blockSize: 1 | 2;
  /** Row node, column node and the block's numbers row by row; a pair once, either way round, and every node with itself. */
  readonly blocks: readonly { readonly v: number; readonly w: number; readonly block: readonly number[] }[];
}

/** Puts the numbers where a factor wants them. */
export function fillValues(factor: SparseFactor, { blocks, blockSize }: TestMatrix): void {
  const { place } = factor.plan.blocks;
  const each = blockSize * blockSize;
  factor.values.fill(0);
  for (const { v, w, block } of blocks) {
    const at = each * entryBetween(factor.plan, v, w);
    const turned = place[v] < place[w];
    for (let i = 0; i < blockSize; i += 1) {
      for (let j = 0; j < blockSize; j += 1) {
        factor.values[at + blockSize * i + j] = turned ? block[blockSize * j + i] : block[blockSize * i + j];
      }
    }
  }
}

/** The matrix in full, row by row. */
export function denseOf({ graph, blocks, blockSize }: TestMatrix): number[][] {
  const n = blockSize * graph.size;
  const dense = Array.from({ length: n }, () => Array<number>(n).fill(0));
  for (const { v, w, block } of blocks) {
    for (let i = 0; i < blockSize; i += 1) {
      for (let j = 0; j < blockSize; j += 1) {
        dense[blockSize * v + i][blockSize * w + j] = block[blockSize * i + j];
        dense[blockSize * w + j][blockSize * v + i] = block[blockSize * i + j];
      }
    }
  }
  return dense;
}

/** Length of `A x - b` over the length of `b`; with blocks of 1, `x` and `b` hold two right-hand sides side by side. */
export function residual({ graph, blocks, blockSize }: TestMatrix, x: Float64Array, b: Float64Array): number {
  const left = b.map((value) => -value);
  const add = (v: number, w: number, block: readonly number[], turned: boolean): void => {
    if (blockSize === 1) {
      left[2 * v] += block[0] * x[2 * w];
      left[2 * v + 1] += block[0] * x[2 * w + 1];
      return;
    }
    for (let i = 0; i < 2; i += 1) {
      for (let j = 0; j < 2; j += 1) left[2 * v + i] += (turned ? block[2 * j + i] : block[2 * i + j]) * x[2 * w + j];
    }
  };
  for (const { v, w, block } of blocks) {
    add(v, w, block, false);
    if (v !== w) add(w, v, block, true);
  }
  if (left.length !== 2 * graph.size) throw new Error('two numbers per node are wanted');
  return length(left) / length(b);
}

const length = (v: Float64Array): number => Math.sqrt(v.reduce((sum, x) => sum + x * x, 0));

/** Grid of n x n points, each joined to its neighbours along rows, columns and one diagonal. */
export function gridPairs(n: number): number[] {
  const pairs: number[] = [];
  for (let j = 0; j < n; j += 1) {
    for (let i = 0; i < n; i += 1) {
      const v = j * n + i;
      if (i + 1 < n) pairs.push(v, v + 1);
      if (j + 1 < n) pairs.push(v, v + n);
      if (i + 1 < n && j + 1 < n) pairs.push(v, v + n + 1);
    }
  }
  return pairs;
}

/** Springs along all pairs, strength from `rand`, and `hold` on every node. With blocks of 2 a spring pulls along a direction of its own. */
export function springMatrix(
  size: number,
  pairs: readonly number[],
  blockSize: 1 | 2,
  hold: number,
  rand: () => number,
): TestMatrix {
  const graph = graphOfPairs(size, pairs);
  const each = blockSize * blockSize;
  const diagonal = Array.from({ length: size }, () => Array<number>(each).fill(0));
  for (const block of diagonal) for (let i = 0; i < blockSize; i += 1) block[i * blockSize + i] = hold;
  const blocks: { v: number; w: number; block: number[] }[] = [];
  for (let v = 0; v < size; v += 1) {
    for (let p = graph.starts[v]; p < graph.starts[v + 1]; p += 1) {
      const w = graph.neighbours[p];
      if (w < v) continue;
      const strength = 0.5 + rand();
      const angle = 2 * Math.PI * rand();
      const [x, y] = [Math.cos(angle), Math.sin(angle)];
      const pull = blockSize === 1 ? [strength] : [x * x, x * y, x * y, y * y].map((value) => strength * value);
      for (let k = 0; k < each; k += 1) {
        diagonal[v][k] += pull[k];
        diagonal[w][k] += pull[k];
      }
      blocks.push({ v, w, block: pull.map((value) => -value) });
    }
  }
  for (let v = 0; v < size; v += 1) blocks.push({ v, w: v, block: diagonal[v] });
  return { graph, blockSize, blocks };
}
