import type { SeamChain } from '../model/seams.ts';

/** Share of a seam's length that comes along to each side of the hand at least. */
const LEAST_SHARE = 0.08;
/** How far to each side it comes along for every mm it is dragged. */
const PULL = 1.5;

/**
 * How much of a seam comes along when one of its corners is dragged away: farther the farther it goes, up to its ends.
 * @param positions x y z per corner of the sculpt, mm.
 * @param at        place of the grabbed corner in the chain, neither the first nor the last.
 * @param to        corner it is dragged to.
 * @returns places in the chain between which it moves; `[0] < at < [1]`.
 */
export function moveReach(
  positions: ArrayLike<number>,
  chain: Pick<SeamChain, 'vertices'>,
  at: number,
  to: number,
): [number, number] {
  const { vertices } = chain;
  const away = (v: number, w: number): number =>
    Math.hypot(...[0, 1, 2].map((k) => positions[3 * v + k] - positions[3 * w + k]));
  let total = 0;
  for (let i = 1; i < vertices.length; i += 1) total += away(vertices[i - 1], vertices[i]);
  const reach = Math.max(LEAST_SHARE * total, PULL * away(vertices[at], to));
  const last = vertices.length - 1;
  let first = at - 1;
  for (let run = away(vertices[at], vertices[first]); first > 0 && run < reach; first -= 1) {
    run += away(vertices[first], vertices[first - 1]);
  }
  let end = at + 1;
  for (let run = away(vertices[at], vertices[end]); end < last && run < reach; end += 1) {
    run += away(vertices[end], vertices[end + 1]);
  }
  return [first, end];
}
