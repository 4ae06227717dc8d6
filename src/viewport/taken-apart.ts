/**
 * How far each piece is off when a prop is taken apart in the order it was put together, the last one first and the first one never.
 * @param order  place of the piece in that order, from 0. @param count  of all pieces.
 * @param share  0 all in place, 1 all apart.
 * @returns 0 in place to 1 all the way off.
 */
export function shareOff(order: number, count: number, share: number): number {
  const off = Math.max(0, Math.min(1, share * (count - 1) - (count - 1 - order)));
  return off * off * (3 - 2 * off);
}

/** How many pieces are in place: off by less than half their way. */
export const countInPlace = (count: number, share: number): number =>
  Array.from({ length: count }, (_, order) => shareOff(order, count, share)).filter((off) => off < 0.5).length;
