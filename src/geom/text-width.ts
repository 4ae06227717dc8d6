import { CAP_HEIGHT_UNITS, MISSING_WIDTH_UNITS, UNITS_PER_EM, WIDTH_RUNS } from './font-widths.ts';

/** Em of DejaVu Sans (what a font size counts) whose capitals stand `capHeightMm` high, mm. */
export function emFromCapHeight(capHeightMm: number): number {
  return (capHeightMm * UNITS_PER_EM) / CAP_HEIGHT_UNITS;
}

/**
 * Length of one line of words in DejaVu Sans as every writer sets it: advance widths added up, without kerning; bold words are the same
 * letters with a thicker stroke and run equally long.
 * @param text         characters outside the table count as the font's box for a missing character.
 * @param capHeightMm  height of a capital letter, mm, >= 0.
 * @returns mm.
 */
export function textWidthMm(text: string, capHeightMm: number): number {
  let units = 0;
  for (const character of text) units += advanceUnits(character.codePointAt(0) ?? 0);
  return (units * capHeightMm) / CAP_HEIGHT_UNITS;
}

function advanceUnits(code: number): number {
  for (const run of WIDTH_RUNS) {
    if (code < run.first) break;
    if (code < run.first + run.widths.length) return run.widths[code - run.first];
  }
  return MISSING_WIDTH_UNITS;
}
