import type { LengthUnit } from '../base/format-length.ts';
import { inInches } from '../base/in-inches.ts';
import { language, type Language } from './language/language.ts';
import { plainTold } from '../base/plain-told.ts';
import { TOLD_WORDS } from './told-words.ts';

const POINTED = /(?<![\p{L}\d._-])(\d+)\.(\d+)(?![\p{L}\d]*[._-]?[\p{L}\d]*\.)(?![\p{L}_])/gu;

/**
 * The one door through which sentences that the worker, the project or the core made come to the screen: findings, problems, reasons, progress.
 * The remedy stands beside a finding as a button, so its name in brackets is left out; a vertex is a corner; lengths are in the unit of the job,
 * in inches by sixteenths, under 3 mm by thousandths.
 * @param spoken the language they are told in: its decimal mark, and those sentences that are translated.
 */
export function toldText(text: string, unit: LengthUnit, spoken: Language = language()): string {
  const plain = plainTold(text);
  const measured = unit === 'mm' ? plain : inInches(plain);
  return TOLD_WORDS.sentence(spoken === 'de' ? measured.replace(POINTED, '$1,$2') : measured);
}

/** The same of a finding or a problem. */
export const findingText = (told: { readonly text: string }, unit: LengthUnit, spoken?: Language): string =>
  toldText(told.text, unit, spoken);
