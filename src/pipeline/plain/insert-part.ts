import { fail, ok, type Result } from '../../base/result.ts';
import type { PartId } from '../../base/ids.ts';
import type { FoamSheet } from '../../model/foam-stock.ts';
import type { InsertPart } from '../../project/plain-part.ts';
import type { Project } from '../../project/project.ts';
import { insertWork } from '../../steps/inserts/insert-work.ts';
import { planInsert } from '../../steps/inserts/plan-insert.ts';
import type { PlainMade } from './plain-outcome.ts';

/**
 * Something that is let into another part; its lid, frames and plate are cut from its own foams.
 * @param wallMm  sheets of what it is let into, from the face inward; empty where the project holds no such part.
 */
export function insertPartWork(
  { wish }: InsertPart,
  foams: readonly FoamSheet[],
  wallMm: readonly number[],
): Result<PlainMade> {
  if (wallMm.length === 0)
    return fail('insert/no-part', 'The part it is let into is not in the project: choose another.');
  const plan = planInsert(wish, { wallMm, sheetsMm: foams.map(({ thicknessMm }) => thicknessMm) });
  return plan.ok ? ok({ ...insertWork(plan.value), letIn: plan.value }, plan.notes) : plan;
}

/** Sheets of a part's wall from the face inward, mm: of another part than a sculpt, its usual foam alone. */
export function wallMmOf({ parts, plain = [], foams }: Project, id: PartId): readonly number[] {
  const sculpt = parts.find((part) => part.id === id);
  if (sculpt !== undefined) return sculpt.layers.map(({ thicknessMm }) => thicknessMm).toReversed();
  const other = plain.find((part) => part.id === id);
  const foam = foams.find((one) => one.id === other?.foams[0]);
  return foam === undefined ? [] : [foam.thicknessMm];
}
