import type { SparseGraph } from '../geom/sparse-graph.ts';
import type { OpenedTriangles } from './surface-distance.ts';

/**
 * What the angles round each inner vertex miss to a full turn, radians: > 0 where the surface bulges, < 0 where it is saddled, 0 where it
 * can be laid flat. 0 at the border.
 * @param loops  loops of the border.
 */
export function angleDefects(opened: OpenedTriangles, loops: readonly Uint32Array[]): Float64Array {
  const { corners, base, foot, height, count, vertexCount } = opened;
  const missing = new Float64Array(vertexCount).fill(2 * Math.PI);
  for (let t = 0; t < count; t += 1) {
    const first = Math.atan2(height[t], foot[t]);
    const second = Math.atan2(height[t], base[t] - foot[t]);
    missing[corners[3 * t]] -= first;
    missing[corners[3 * t + 1]] -= second;
    missing[corners[3 * t + 2]] -= Math.PI - first - second;
  }
  for (const loop of loops) for (const v of loop) missing[v] = 0;
  return missing;
}

/**
 * Amounts at vertices handed on to the neighbours round after round, half of each every time; the sum stays. What single vertices have
 * for want of smoothness evens out, what an area has stays about where it is: it spreads over root(rounds / 2) sides or so.
 */
export function handedRound(graph: SparseGraph, amounts: Float64Array, rounds: number): Float64Array {
  const { size, starts, neighbours } = graph;
  const now = amounts.slice();
  const share = new Float64Array(size);
  for (let round = 0; round < rounds; round += 1) {
    for (let v = 0; v < size; v += 1) {
      const others = starts[v + 1] - starts[v];
      if (others === 0) continue;
      now[v] /= 2;
      share[v] = now[v] / others;
    }
    for (let v = 0; v < size; v += 1) {
      let sum = now[v];
      for (let i = starts[v]; i < starts[v + 1]; i += 1) sum += share[neighbours[i]];
      now[v] = sum;
    }
  }
  return now;
}
