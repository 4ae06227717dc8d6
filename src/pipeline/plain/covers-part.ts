import { ok, type Result } from '../../base/result.ts';
import type { FoamSheet } from '../../model/foam-stock.ts';
import type { CoversFields } from '../../project/trim-part.ts';
import { coversOf } from '../covers.ts';
import type { TrimSculpt } from '../trim-sculpt.ts';
import type { PlainMade } from './plain-outcome.ts';
import { noSculpt, stripsOn } from './trim-part.ts';

/** The shortest set of strips over all seams of a sculpt that are in view, in a foam. */
export function coversPartWork(fields: CoversFields, foam: FoamSheet, on: TrimSculpt | null): Result<PlainMade> {
  if (on === null) return noSculpt();
  const { lines, findings } = coversOf(on, fields);
  const made = stripsOn(fields.on, on, lines, fields.strip, foam);
  if (!made.ok) return made;
  return ok({ ...made.value, findings: [...findings, ...made.value.findings] }, made.notes);
}
