import type { PatchView } from '../model/bench-view.ts';
import type { Bench } from './bench-state.ts';
import { edgeIndexOf } from './edge-index.ts';

/** A seam that ends inside a piece. */
export interface Dart {
  readonly letter: string;
  /** Index of its seam. */
  readonly chain: number;
  /** Corner of the sculpt it ends at, and its number in the file. */
  readonly tip: number;
  readonly fileCorner: number;
  /** mm. */
  readonly lengthMm: number;
}

/** The darts of the sculpt, in the order of their seams. */
export function dartsOf({ sculpt, seams }: Bench): readonly Dart[] {
  if (sculpt === null || seams === null) return [];
  const index = edgeIndexOf(sculpt);
  const isTip = (v: number): boolean =>
    v < sculpt.fileVertex.length && index.allEdgesAt(v).filter((edge) => seams.chainOfEdge[edge] >= 0).length === 1;
  return seams.chains.flatMap((chain, i) => {
    if (chain.kind === 'open' || chain.closed) return [];
    const ends = [chain.vertices[0], chain.vertices[chain.vertices.length - 1]].filter(isTip);
    const lengthMm = lengthAlong(sculpt.positions, chain.vertices);
    return ends.map((tip) => ({ letter: chain.letter, chain: i, tip, fileCorner: sculpt.fileVertex[tip], lengthMm }));
  });
}

/** Length of a line of corners, mm. */
export function lengthAlong(positions: Float32Array, corners: ArrayLike<number>): number {
  let length = 0;
  for (let i = 1; i < corners.length; i += 1) {
    const [a, b] = [3 * corners[i - 1], 3 * corners[i]];
    length += Math.hypot(
      positions[b] - positions[a],
      positions[b + 1] - positions[a + 1],
      positions[b + 2] - positions[a + 2],
    );
  }
  return length;
}

/** The patch a corner of the sculpt lies inside of. */
export const patchAt = ({ pieces }: Bench, corner: number): PatchView | undefined =>
  pieces?.patches.slice(0, pieces.benchPatches).find(({ meshVertices }) => meshVertices.includes(corner));
