import { DisjointSets } from '../../base/disjoint-sets.ts';
import { chainOf, mateOf, type SeamNet } from './seam-net.ts';

/** Which chains are glued: 1 for each that is. */
export type Glued = Uint8Array;

/** The bodies there are, and the rims of their openings. */
export interface Rims {
  /** Per piece a number that all pieces of its body share: its lowest one. */
  readonly bodyOf: Int32Array;
  /** Per side the rim it lies on, or -1 where it is glued or is none. */
  readonly rimOf: Int32Array;
  /** Per side the one that follows it along its rim, or -1. */
  readonly follows: Int32Array;
  /** Per rim, mm. */
  readonly lengthMm: readonly number[];
}

/** Follows every rim round: from the end of an edge that is free on to the next one, across the seams that are glued there. */
export function rimsOf(net: SeamNet, glued: Glued): Rims {
  const { chains, next, pieceCount } = net;
  const bodies = new DisjointSets(pieceCount);
  chains.forEach(({ pieces: [a, b] }, c) => {
    if (glued[c] !== 0 && b !== undefined) bodies.join(a, b);
  });
  const rimOf = new Int32Array(next.length).fill(-1);
  const follows = new Int32Array(next.length).fill(-1);
  const lengthMm: number[] = [];
  for (let first = 0; first < next.length; first += 1) {
    if (next[first] < 0 || glued[chainOf(first)] !== 0 || rimOf[first] >= 0) continue;
    let length = 0;
    let side = first;
    do {
      rimOf[side] = lengthMm.length;
      length += chains[chainOf(side)].lengthMm;
      follows[side] = freeSideAfter(net, glued, side);
      side = follows[side];
    } while (side !== first);
    lengthMm.push(length);
  }
  return { bodyOf: Int32Array.from({ length: pieceCount }, (_, p) => bodies.find(p)), rimOf, follows, lengthMm };
}

/** How a seam's two edges lie before it is glued. */
export type Closing = 'join' | 'zip' | 'ring';

/**
 * join: on two bodies. zip: on one rim, one after the other, so that the rim only grows shorter. ring: anywhere else on one body, so that a
 * ring is closed, or two openings become none.
 */
export function closingOf({ chains }: SeamNet, { bodyOf, follows }: Rims, chain: number): Closing {
  const [a, b] = chains[chain].pieces;
  if (bodyOf[a] !== bodyOf[b]) return 'join';
  const [own, other] = [2 * chain, 2 * chain + 1];
  return follows[own] === other || follows[other] === own ? 'zip' : 'ring';
}

/**
 * The glued chains that come together where a free side ends, in their order round the corner; none where the next side of its own piece is free.
 */
export function chainsRoundEnd({ next }: SeamNet, glued: Glued, side: number): readonly number[] {
  const round: number[] = [];
  for (let after = next[side]; glued[chainOf(after)] !== 0; after = next[mateOf(after)]) round.push(chainOf(after));
  return round;
}

function freeSideAfter({ next }: SeamNet, glued: Glued, side: number): number {
  let after = next[side];
  while (glued[chainOf(after)] !== 0) after = next[mateOf(after)];
  return after;
}
