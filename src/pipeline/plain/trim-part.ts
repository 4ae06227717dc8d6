import type { Finding } from '../../base/finding.ts';
import { formatMm } from '../../base/format-length.ts';
import type { PartId } from '../../base/ids.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import type { FoamSheet } from '../../model/foam-stock.ts';
import type { PlainWork } from '../../model/plain-piece.ts';
import type { StripFacts, TrimWish } from '../../model/trim.ts';
import type { StripWish, TrimFields } from '../../project/trim-part.ts';
import { makeTrim } from '../../steps/trim/make-trim.ts';
import type { TrimLine } from '../../steps/trim/trim-ground.ts';
import { trimLines } from '../trim-lines.ts';
import { groundOf, type TrimSculpt } from '../trim-sculpt.ts';
import type { PlainMade } from './plain-outcome.ts';

/** Strips along lines of a sculpt, in a foam. */
export function trimPartWork(
  { on: part, along, strip }: TrimFields,
  foam: FoamSheet,
  on: TrimSculpt | null,
): Result<PlainMade> {
  if (on === null) return noSculpt();
  const lines = trimLines(on, along);
  return lines.ok ? stripsOn(part, on, lines.value, strip, foam) : lines;
}

/** Strips on the outside of a sculpt. @param part its id. */
export function stripsOn(
  part: PartId,
  on: TrimSculpt,
  lines: readonly TrimLine[],
  strip: StripWish,
  { thicknessMm, neutralFraction }: FoamSheet,
): Result<PlainMade> {
  const wish: Omit<TrimWish, 'along'> = { ...strip, thicknessMm, neutralFraction };
  const made = makeTrim(groundOf(on, neutralFraction * thicknessMm), lines, wish);
  if (!made.ok) return made;
  const { work, strips, placing } = made.value;
  const laid = { on: part, strips, placing };
  return ok({ ...(isBought(strip) ? boughtWork(work, strips, wish) : work), laid }, made.notes);
}

const isBought = ({ profile }: StripWish): boolean => 'from' in profile && profile.from === 'bought';

/** Edging that is bought by length: nothing of it is cut from sheet. */
function boughtWork(
  work: PlainWork,
  strips: readonly StripFacts[],
  { profile, widthMm, thicknessMm }: Omit<TrimWish, 'along'>,
): PlainWork {
  const lengthMm = strips.reduce((sum, strip) => sum + strip.lengthMm, 0);
  const lengths = strips.map((strip) => `${strip.key} ${Math.ceil(strip.lengthMm)}`).join(', ');
  const buy: Finding = {
    code: 'trim/buy',
    severity: 'note',
    text: `Buy ${formatMm(Math.ceil(lengthMm))} of ${profile.kind} edging, ${formatMm(widthMm)} wide and ${formatMm(thicknessMm)} high, and cut it to these lengths in mm: ${lengths}.`,
    value: lengthMm,
    unit: 'mm',
    where: {},
  };
  return {
    ...work,
    pieces: [],
    steps: work.steps.map((step) => ({ ...step, pieces: [] })),
    findings: [...work.findings, buy],
  };
}

export const noSculpt = () =>
  fail('trim/no-sculpt', 'The sculpt it lies on is not in the project or could not be parted: choose another.');
