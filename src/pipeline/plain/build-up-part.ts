import { ok, type Result } from '../../base/result.ts';
import type { WrapSheet } from '../../model/build-up.ts';
import type { PlainWork } from '../../model/plain-piece.ts';
import type { BuildUpPart } from '../../project/plain-part.ts';
import { buildUpOf } from '../build-up.ts';
import type { PlainGround } from './plain-ground.ts';

/** A core with what is built up on it of its foams, no piece larger than a sheet. Fails with a `core/…` problem. */
export function buildUpPartWork({ wish, wraps }: BuildUpPart, { foams }: PlainGround): Result<PlainWork> {
  const sheets = foams
    .filter(({ id }) => wraps?.includes(id) !== false)
    .map(({ thicknessMm, neutralFraction, sheetWidthMm, sheetHeightMm }): WrapSheet => ({
      thicknessMm,
      neutralFraction,
      sizeMm: [sheetWidthMm, sheetHeightMm],
    }));
  const made = buildUpOf({ ...wish, sheets });
  return made.ok ? ok({ ...made.value.work, findings: made.value.findings }, made.notes) : made;
}
