import { runWithPauses } from '../base/stepwise.ts';
import type { Work } from '../base/work.ts';
import type { SculptView } from '../model/bench-view.ts';
import type { SourceModel } from '../model/source-model.ts';
import type { SculptPart } from '../project/project.ts';
import { factSteps } from '../steps/read/facts.ts';
import { readModel } from '../steps/read/read-model.ts';
import { repairSteps } from '../steps/read/repair.ts';
import { meshFromModel, mmPerUnitOf } from '../steps/read/size.ts';
import { sculptView } from './sculpt-view.ts';

/** Number of the update that a first look counts as; the others count from 1. */
export const FIRST_LOOK = -1;

/** A sculpt that was only read so far. */
export interface FirstLook {
  /** As the file has it. */
  readonly model: SourceModel;
  /** Without a tree: what that takes comes later. */
  readonly view: SculptView;
}

/**
 * The sculpt before anything is worked out from it. Shares no code with what follows, so that it is seen while that is still on its way.
 * @returns null where it takes more than its file to know how it looks, or it cannot be read: that is found, and told, by the run itself.
 * @throws Cancelled when the work was called off.
 */
export async function firstLook(
  { source, scale, repairs, simplify }: Pick<SculptPart, 'source' | 'scale' | 'repairs' | 'simplify'>,
  bytes: Uint8Array,
  work: Work,
): Promise<FirstLook | null> {
  if (scale === null || scale.by === 'body' || simplify !== undefined) return null;
  const rest = (): Promise<void> | undefined => work.pause(0);
  const read = await readModel(bytes, source.fileName, work);
  if (!read.ok) return null;
  const repaired = await runWithPauses(repairSteps(read.value, repairs), rest);
  if (!repaired.ok) return null;
  const model = repaired.value;
  const sized = mmPerUnitOf(model, scale);
  if (!sized.ok) return null;
  const mmPerUnit = sized.value;
  const mesh = meshFromModel(model, mmPerUnit);
  const facts = await runWithPauses(factSteps(model), rest);
  return { model: read.value, view: sculptView({ model, facts, mesh, mmPerUnit }, { bvh: null }) };
}
