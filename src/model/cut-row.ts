import type { RuledStrip } from './ruled-strip.ts';

/** One thing to be cut, as the list tells it. */
export interface CutRow {
  readonly number: number;
  readonly name: string;
  readonly quantity: number;
  readonly foam: string;
  readonly thicknessMm: number;
  /** Of the box round it as its template lies, mm. */
  readonly widthMm: number;
  readonly heightMm: number;
  /** One of them. */
  readonly areaMm2: number;
  /** The longest edge that leans, mm, and the steepest lean of any, degrees from square without a sign; 0 where all are square. */
  readonly longestBevelMm: number;
  readonly steepestDeg: number;
  /** How the saw is set for it. */
  readonly saw: readonly string[];
  /** Of what has no paper: the strip that is ruled. */
  readonly ruled?: RuledStrip;
}

/** A row of the list of settings: the saw is set once, and everything beside it is cut. */
export interface SawRow {
  readonly setting: string;
  readonly number: number;
  readonly name: string;
  readonly edges: string;
}
