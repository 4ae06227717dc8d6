import type { PartId } from '../../base/ids.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import type { FoamSheet } from '../../model/foam-stock.ts';
import type { TrimWish } from '../../model/trim.ts';
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
  return ok({ ...work, laid: { on: part, strips, placing } }, made.notes);
}

export const noSculpt = () =>
  fail('trim/no-sculpt', 'The sculpt it lies on is not in the project or could not be parted: choose another.');
