import { expect } from 'vitest';

/** For `toEqual`: numbers that may differ by rounding, and -0 for 0. @param digits after the point. */
export const near = (numbers: Iterable<number>, digits = 12): number[] =>
  Array.from(numbers, (value) => expect.closeTo(value, digits) as number);
