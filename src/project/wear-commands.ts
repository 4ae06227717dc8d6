import type { Core } from '../model/clearance.ts';
import type { GirthTape, OpeningUse, PassChoice } from '../model/girth.ts';
import type { BodyJoint } from '../model/joint.ts';
import { onSculpt, type Command } from './commands.ts';

export { isCoreModel } from '../model/clearance.ts';

/** Lays a tape, or puts the one of the same id elsewhere. @param mergeKey of moves that undo as one. */
export const setTape = (tape: GirthTape, mergeKey?: string): Command =>
  onSculpt('measure a girth', (part) => ({ ...part, tapes: withOne(part.tapes ?? [], tape) }), mergeKey);

export const removeTape = (id: string): Command =>
  onSculpt('take a tape off', (part) =>
    part.tapes?.some((tape) => tape.id === id) === true
      ? { ...part, tapes: part.tapes.filter((tape) => tape.id !== id) }
      : part,
  );

/** Puts a rod, pipe or model in, or the one of the same id elsewhere. @param mergeKey of moves that undo as one. */
export const setCore = (core: Core, mergeKey?: string): Command =>
  onSculpt('put a core in', (part) => ({ ...part, core: withOne(part.core ?? [], core) }), mergeKey);

export const removeCore = (id: string): Command =>
  onSculpt('take a core out', (part) =>
    part.core?.some((core) => core.id === id) === true
      ? { ...part, core: part.core.filter((core) => core.id !== id) }
      : part,
  );

/** Puts a joint in, or the one of the same id elsewhere. @param mergeKey of moves that undo as one. */
export const setJoint = (joint: BodyJoint, mergeKey?: string): Command =>
  onSculpt('put a joint in', (part) => ({ ...part, joints: withOne(part.joints ?? [], joint) }), mergeKey);

export const removeJoint = (id: string): Command =>
  onSculpt('take a joint out', (part) =>
    part.joints?.some((joint) => joint.id === id) === true
      ? { ...part, joints: part.joints.filter((joint) => joint.id !== id) }
      : part,
  );

/** Says what must pass when the part is put on; null: it is not worn. */
export const setWorn = (worn: PassChoice | null): Command =>
  onSculpt(
    'say what must pass',
    (part) => {
      if (worn !== null) return { ...part, worn };
      if (part.worn === undefined) return part;
      const { worn: _, ...rest } = part;
      return rest;
    },
    'worn',
  );

/**
 * Makes the part larger or smaller than it is now.
 * @param factor     > 0, else RangeError.
 * @param longestMm  longest side of the sculpt now, mm: a size given by the file's unit becomes one by this.
 */
export function sizeBy(factor: number, longestMm: number): Command {
  if (!(factor > 0)) throw new RangeError(`factor ${factor}`);
  return onSculpt('size the part to the body', (part) => {
    const { scale } = part;
    if (scale === null || factor === 1) return part;
    // What followed the body has a size of its own then.
    return scale.by === 'unit' || scale.by === 'body'
      ? { ...part, scale: { by: 'size', axis: 'longest', mm: factor * longestMm } }
      : { ...part, scale: { ...scale, mm: factor * scale.mm } };
  });
}

/** Most a joint may be asked to bend either way, degrees. */
export const MOST_BEND_DEG = 170;

export const OPENING_USES: readonly OpeningUse[] = ['way-in', 'sight', 'air'];

/** Foam stands no farther off its sculpt than this, mm: beyond is another sculpt. */
export const MOST_OFF_MM = 200;

/**
 * Moves the foam off the sculpt, outward, or inward where negative; 0 lays it on the sculpt again.
 * @param offMm  at most {@link MOST_OFF_MM} either way, else RangeError.
 */
export function setOff(offMm: number): Command {
  if (!(Math.abs(offMm) <= MOST_OFF_MM)) throw new RangeError(`${offMm} mm off the sculpt`);
  return onSculpt('move the foam off the sculpt', (part) => {
    if (offMm === (part.offMm ?? 0)) return part;
    if (offMm !== 0) return { ...part, offMm };
    const { offMm: _, ...rest } = part;
    return rest;
  });
}

/** `tape-1`, `tape-2` …: the first that is free. */
export function freeId(kind: 'tape' | 'core' | 'joint', taken: readonly { readonly id: string }[]): string {
  for (let i = 1; ; i += 1) if (!taken.some(({ id }) => id === `${kind}-${i}`)) return `${kind}-${i}`;
}

function withOne<T extends { readonly id: string }>(list: readonly T[], one: T): readonly T[] {
  return list.some(({ id }) => id === one.id) ? list.map((old) => (old.id === one.id ? one : old)) : [...list, one];
}
