import { formatThickness, type LengthUnit } from './format-length.ts';

/** Languages that paper can be printed in, English first: it is what the core is written in. */
export const PAPER_LANGUAGES = ['en', 'de'] as const;
export type PaperLanguage = (typeof PAPER_LANGUAGES)[number];

/**
 * How paper speaks. What a line of words is in the language of the paper and in the unit of the job: whole, or left as it is where it is not known.
 * It is asked before a line is measured, so that words find their places in the language they are read in. One language in one unit is one
 * function: results are remembered by it.
 */
export interface Say {
  (text: string): string;
  /** What rules are ruled in, and figures that are measured off; mm if left out. */
  readonly unit?: LengthUnit;
  /** The same words with lengths as they are; left out where all are. */
  readonly asIs?: (text: string) => string;
}

export const inEnglish: Say = (text) => text;

/** A thickness of foam, mm, in the unit it is sold by. */
export const sayThickness = (mm: number, say: Say): string => (say.asIs ?? say)(formatThickness(mm, say.unit ?? 'mm'));
