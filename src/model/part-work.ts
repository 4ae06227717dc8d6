import type { PieceId } from '../base/ids.ts';
import type { PlainStep } from './plain-piece.ts';

/** The work on a part that no sculpt was parted for, as lists and paper tell it. */
export interface PartWork {
  readonly part: string;
  readonly name: string;
  /** How many of it the prop has: each step is done for every one. */
  readonly copies: number;
  /** In their order; one or more. */
  readonly steps: readonly PartStep[];
}

export interface PartStep extends Pick<PlainStep, 'work' | 'text' | 'glueMm2' | 'cautions'> {
  /** What is taken up, and the numbers on it. */
  readonly pieces: readonly PieceId[];
  readonly numbers: readonly number[];
}
