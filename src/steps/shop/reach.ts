import { MinHeap } from '../../base/min-heap.ts';
import { handReachMm } from '../../model/hand-reach.ts';
import type { ReachGraph } from './reach-graph.ts';
import { rimsOf, type Glued, type Rims } from './rims.ts';
import { chainOf, isGlueable, mateOf, type SeamNet } from './seam-net.ts';

/** What orders of gluing are judged on. */
export interface GlueJob {
  readonly net: SeamNet;
  readonly graph: ReachGraph;
}

/**
 * Which glued seams a hand reaches from within. A place is reached where the way to it over the foam, from some rim of the same body, is no
 * longer than a hand goes through that rim (`handReachMm`). All of a seam must be reached from one rim or another. Only rims are asked how wide
 * they are: a neck farther in is not.
 * @param glued those that are glued, the seam in question among them: its own gap is shut when it is pressed.
 * @returns per chain 1 where all of it is reached; open edges always are.
 */
export function reachedChains({ net, graph }: GlueJob, glued: Glued): Uint8Array {
  const { firstPlace, gapMm } = graph;
  const short = shortOf(graph, glued, startsOf(graph, rimsOf(net, glued)));
  return Uint8Array.from(net.chains, (_, c) => {
    // Between two places the hand comes from either one: it is shortest in the middle of the two ways.
    for (let place = firstPlace[2 * c]; place < firstPlace[2 * c + 1]; place += 1) {
      const after = place + 1 < firstPlace[2 * c + 1] ? place + 1 : place;
      if (short[place] > 0 || short[place] + short[after] + gapMm[place] > 0) return 0;
    }
    return 1;
  });
}

/** Whether a seam is reached when it is glued after these. */
export function isReached(job: GlueJob, glued: Glued, chain: number): boolean {
  const after = glued.slice();
  after[chain] = 1;
  return reachedChains(job, after)[chain] === 1;
}

/** All chains that join two edges. */
export const glueableChains = ({ net }: Pick<GlueJob, 'net'>): readonly number[] =>
  net.chains.flatMap((_, c) => (isGlueable(net, c) ? [c] : []));

/** For each place how far a hand would have to be longer to work there from the rim it lies on, mm; Infinity off all rims. */
function startsOf({ firstPlace, pieceOf }: ReachGraph, { rimOf, lengthMm }: Rims): Float64Array {
  const short = new Float64Array(pieceOf.length).fill(Infinity);
  rimOf.forEach((rim, side) => {
    if (rim >= 0) short.fill(-handReachMm(lengthMm[rim]), firstPlace[side], firstPlace[side + 1]);
  });
  return short;
}

/** The same for places farther in: by the shortest ways over all pieces that are glued together. */
function shortOf({ pieces, firstPlace, pieceOf, rowOf }: ReachGraph, glued: Glued, starts: Float64Array): Float64Array {
  const short = starts;
  const across = placesAcross(firstPlace, glued);
  const heap = new MinHeap();
  short.forEach((key, place) => {
    if (key < Infinity) heap.push(key, place);
  });
  const reach = (place: number, key: number): void => {
    // What is too far from there is of no use to anybody.
    if (key >= short[place] || key > 0) return;
    short[place] = key;
    heap.push(key, place);
  };
  while (heap.size > 0) {
    const { key, item } = heap.pop();
    if (key > short[item]) continue;
    const { places, mm } = pieces[pieceOf[item]];
    const from = rowOf[item] * places.length;
    for (let i = 0; i < places.length; i += 1) reach(places[i], key + mm[from + i]);
    if (across[item] >= 0) reach(across[item], key);
  }
  return short;
}

/** For each place the one it is glued to, or -1. */
function placesAcross(firstPlace: Uint32Array, glued: Glued): Int32Array {
  const across = new Int32Array(firstPlace[firstPlace.length - 1]).fill(-1);
  for (let side = 0; side + 1 < firstPlace.length; side += 1) {
    if (glued[chainOf(side)] === 0) continue;
    for (let place = firstPlace[side]; place < firstPlace[side + 1]; place += 1)
      across[place] = place - firstPlace[side] + firstPlace[mateOf(side)];
  }
  return across;
}
