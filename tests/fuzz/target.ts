/** What a reader is given and how its answer is judged. */
export interface Target {
  readonly name: string;
  /** Ending of a file of this kind, for what is kept. */
  readonly ending: string;
  /** Whole files that are read without a fault, the small ones first. */
  seeds(): readonly Uint8Array[] | Promise<readonly Uint8Array[]>;
  /** Words and marks of the format that are put into inputs. */
  readonly words: readonly string[];
  /** A file that is built by the rules of its format, wild in what they leave open. `seeds` is all that has been kept so far. */
  grammar?(random: Random, seeds: readonly Uint8Array[]): Uint8Array;
  /**
   * Reads, and goes on a step where the reading went well.
   * @returns what came of it, in a few words that are alike for answers that are alike: a new one is kept and changed further.
   * @throws where the answer is a fault of ours.
   */
  look(bytes: Uint8Array): Promise<Answer>;
}

export interface Answer {
  readonly isOk: boolean;
  readonly kind: string;
  /** Code of the problem, where there is one. */
  readonly code?: string;
}

/** A seeded source of numbers in [0, 1). */
export type Random = () => number;

/** A whole number from 0 below `count`. */
export const below = (random: Random, count: number): number => Math.floor(random() * count);

/** One of a list. */
export const oneOf = <T>(random: Random, list: readonly T[]): T => list[below(random, list.length)];

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

export const textOf = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);
