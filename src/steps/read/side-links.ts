import type { Stepwise } from '../../base/stepwise.ts';
import type { SourceModel } from '../../model/source-model.ts';
import { eachEdgeSteps, polygonSideSteps } from './polygon-sides.ts';

/** In {@link SideLinks.across}: the edge has one face. */
export const OPEN = -1;
/** In {@link SideLinks.across}: the edge has more than two faces. */
export const MANY = -2;

/** Who lies across each side of each polygon. Side `i` runs from `faceVertices[i]` to `faceVertices[next[i]]`. */
export interface SideLinks {
  readonly next: Uint32Array;
  readonly face: Uint32Array;
  /** The side of the other face where the edge has two, else {@link OPEN} or {@link MANY}. */
  readonly across: Int32Array;
}

export function* sideLinkSteps({
  faceStarts,
  faceVertices,
}: Pick<SourceModel, 'faceStarts' | 'faceVertices'>): Stepwise<SideLinks> {
  const sides = yield* polygonSideSteps(faceStarts, faceVertices);
  const { next, face, order } = sides;
  const across = new Int32Array(faceVertices.length).fill(OPEN);
  yield* eachEdgeSteps(sides, faceVertices, (from, to) => {
    if (to - from === 2) {
      across[order[from]] = order[from + 1];
      across[order[from + 1]] = order[from];
    } else if (to - from > 2) for (let i = from; i < to; i += 1) across[order[i]] = MANY;
  });
  return { next, face, across };
}

/** True when side `i` and the side across it run the same way, so that one of their faces is turned over. */
export const runsAlong = (faceVertices: Uint32Array, { across }: SideLinks, i: number): boolean =>
  across[i] >= 0 && faceVertices[i] === faceVertices[across[i]];
