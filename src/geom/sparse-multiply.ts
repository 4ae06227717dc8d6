import type { FactorPlan } from './sparse-plan.ts';

/**
 * `out = A x` for a symmetric matrix of 2 x 2 blocks.
 * @param values  four numbers per entry of the plan, the lower half of A.
 * @param x       two numbers per node of the graph.
 * @param out     the same, overwritten; not `x` itself.
 */
export function multiplyBlocks(plan: FactorPlan, values: Float64Array, x: Float64Array, out: Float64Array): void {
  const { entryStarts, entryRows, blocks } = plan;
  const { order } = blocks;
  out.fill(0);
  for (let c = 0; c < plan.size; c += 1) {
    const w = 2 * order[c];
    const wx = x[w];
    const wy = x[w + 1];
    let p = 4 * entryStarts[c];
    let sumX = values[p] * wx + values[p + 2] * wy;
    let sumY = values[p + 2] * wx + values[p + 3] * wy;
    for (let e = entryStarts[c] + 1; e < entryStarts[c + 1]; e += 1) {
      p += 4;
      const v = 2 * order[entryRows[e]];
      const a = values[p];
      const b = values[p + 1];
      const d = values[p + 2];
      const f = values[p + 3];
      const vx = x[v];
      const vy = x[v + 1];
      out[v] += a * wx + b * wy;
      out[v + 1] += d * wx + f * wy;
      sumX += a * vx + d * vy;
      sumY += b * vx + f * vy;
    }
    out[w] += sumX;
    out[w + 1] += sumY;
  }
}
