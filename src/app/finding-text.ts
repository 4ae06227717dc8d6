import { formatFine, formatInches, type LengthUnit } from '../base/format-length.ts';
import { language, type Language } from './language/language.ts';
import { plainTold } from '../base/plain-told.ts';
import { TOLD_WORDS } from './told-words.ts';

/** Lengths under this are told in thousandths of an inch: in sixteenths 0.3 mm would be nothing. */
const FINE_MM = 3;

/** `12 mm`, `12.5 mm`, and rows of figures with one unit: `300 × 200 mm`, `12 and 13 mm`, `3 to 4 mm`. Areas are left out. */
const IN_MM =
  /(?<![\p{L}\d.,])(\d+(?:[.,]\d+)?(?:[ \u00a0]?(?:×|x|by|and|to|or)[ \u00a0]?\d+(?:[.,]\d+)?)*)[ \u00a0]mm\b(?![²³])/gu;
const FIGURE = /\d+(?:[.,]\d+)?/g;
const POINTED = /(?<![\p{L}\d._-])(\d+)\.(\d+)(?![\p{L}\d]*[._-]?[\p{L}\d]*\.)(?![\p{L}_])/gu;

/**
 * The one door through which sentences that the worker, the project or the core made come to the screen: findings, problems, reasons, progress.
 * The remedy stands beside a finding as a button, so its name in brackets is left out; a vertex is a corner; lengths are in the unit of the job,
 * in inches by sixteenths, under 3 mm by thousandths.
 * @param spoken the language they are told in: its decimal mark, and those sentences that are translated.
 */
export function toldText(text: string, unit: LengthUnit, spoken: Language = language()): string {
  const plain = plainTold(text);
  const measured = unit === 'mm' ? plain : plain.replace(IN_MM, (_, figures: string) => inInches(figures));
  return TOLD_WORDS.sentence(spoken === 'de' ? measured.replace(POINTED, '$1,$2') : measured);
}

/** The same of a finding or a problem. */
export const findingText = (told: { readonly text: string }, unit: LengthUnit, spoken?: Language): string =>
  toldText(told.text, unit, spoken);

const inInches = (figures: string): string =>
  figures.replace(FIGURE, (figure) => {
    const mm = Number(figure.replace(',', '.'));
    return mm > 0 && mm < FINE_MM ? formatFine(mm, 'in') : formatInches(mm);
  });
