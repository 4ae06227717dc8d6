/** Share of the whole way on which one piece comes off: others set off meanwhile, so that none darts away where there are many. */
const SPAN = 0.35;

/**
 * How far a piece is off while all are taken apart, the one that was put on last first.
 * @param place  of the piece in the order they are put together, from 0. @param count  of all pieces.
 * @param share  0 all in place, 1 all apart.
 * @returns 0 in place to 1 all the way off.
 */
export function shareOff(place: number, count: number, share: number): number {
  const span = Math.max(SPAN, 1 / count);
  const setsOff = count < 2 ? 0 : ((1 - span) * (count - 1 - place)) / (count - 1);
  const off = Math.max(0, Math.min(1, (share - setsOff) / span));
  return off * off * (3 - 2 * off);
}

/** How many pieces are in place: off by less than half their way. */
export const countInPlace = (count: number, share: number): number =>
  Array.from({ length: count }, (_, place) => shareOff(place, count, share)).filter((off) => off < 0.5).length;

/** Places from 0 in the order of these figures; of two alike the first comes first. */
export function placesBy(figures: readonly number[]): readonly number[] {
  const places = figures.map(() => 0);
  figures
    .map((_, i) => i)
    .sort((a, b) => figures[a] - figures[b] || a - b)
    .forEach((i, place) => (places[i] = place));
  return places;
}
