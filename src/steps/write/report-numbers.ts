/** Packed points as pairs. */
export const pairs = (xy: ArrayLike<number>): number[][] =>
  Array.from({ length: xy.length / 2 }, (_, i) => [xy[2 * i], xy[2 * i + 1]]);

/** Packed corners as triples. */
export const triples = (numbers: ArrayLike<number>): number[][] =>
  Array.from({ length: numbers.length / 3 }, (_, i) => [numbers[3 * i], numbers[3 * i + 1], numbers[3 * i + 2]]);
