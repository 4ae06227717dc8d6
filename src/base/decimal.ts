/** A number as people write it, else NaN: no other bases, no words. */
export const decimal = (word: string): number =>
  /^\s*[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?\s*$/i.test(word) ? Number(word) : NaN;
