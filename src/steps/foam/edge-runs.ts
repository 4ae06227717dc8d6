import type { Patch } from '../../model/patch.ts';
import type { SeamChain } from '../../model/seams.ts';

/** Where one side of a seam runs along a ring of a piece. */
export interface EdgeRun {
  /** Index of the chain. */
  readonly chain: number;
  readonly side: 0 | 1;
  /** Index of the loop. */
  readonly ring: number;
  /** Index in the loop of the run's first point in the loop's own order. */
  readonly from: number;
  /** Index of its last point. */
  readonly to: number;
  /** How many edges it has. */
  readonly count: number;
  /** True when the loop runs against the chain: always so on side 1, which has the chain on its left from the other side. */
  readonly reversed: boolean;
}

/** For each patch its runs, in the order of its rings and along them. */
export function edgeRuns(patches: readonly Patch[], chains: readonly SeamChain[]): readonly (readonly EdgeRun[])[] {
  const places = patches.map(placesOnLoops);
  const runs: EdgeRun[][] = patches.map(() => []);
  for (const [index, chain] of chains.entries()) {
    for (const [which, side] of chain.sides.entries()) {
      const reversed = which === 1;
      const { localVertices } = side;
      const [first, last] = [localVertices[0], localVertices[localVertices.length - 1]];
      const start = places[side.patch].get(reversed ? last : first);
      const end = places[side.patch].get(reversed ? first : last);
      if (start === undefined || end === undefined)
        throw new Error(`edgeRuns: seam ${chain.id} leaves the border of patch ${side.patch}`);
      runs[side.patch].push({
        chain: index,
        side: reversed ? 1 : 0,
        ring: start.ring,
        from: start.at,
        to: end.at,
        count: localVertices.length - 1,
        reversed,
      });
    }
  }
  return runs.map((list) => list.sort((a, b) => a.ring - b.ring || a.from - b.from));
}

function placesOnLoops(patch: Patch): Map<number, { ring: number; at: number }> {
  const places = new Map<number, { ring: number; at: number }>();
  patch.loops.forEach((loop, ring) => loop.forEach((v, at) => places.set(v, { ring, at })));
  return places;
}

/** Edge of the chain for the `j`-th edge of a run in the ring's order. */
export const chainEdge = (run: EdgeRun, j: number): number => (run.reversed ? run.count - 1 - j : j);
