import { fail, ok, type Result } from '../../base/result.ts';
import type { CellKind, InsertForm, InsertKind, InsertWish } from '../../model/insert.ts';
import { findInsertSize, type InsertSize } from '../../model/insert-sizes.ts';
import { faultOfForm, sizeOfForm } from './outlines.ts';

/** Room for the contacts of a bare cell at both ends together, mm: springs of 3 to 5 mm (common practice). */
export const CONTACTS_MM = 8;

/** Between two slots of an anchor, mm, so that the bridge of foam and plate holds [J]. */
const SLOT_BRIDGE_MM = 20;

/** Most things beside each other in one pocket. */
const MOST_COUNT = 50;

/** What is let in, with its own measures, as it lies. */
export interface Thing {
  /** As it is named in sentences: `R6 battery`. */
  readonly name: string;
  /** All of them together; of a pane the window, of a switch the hole in its panel. */
  readonly form: InsertForm;
  /** One of them, and how far the next is from it along y, mm: slots are cut one by one. */
  readonly each: InsertForm;
  readonly stepMm: number;
  readonly count: number;
  readonly depthMm: number;
  readonly opening: InsertForm | null;
  readonly panelMm: readonly [number, number] | null;
  readonly cell: CellKind | null;
}

/** Fails with `insert/size`, `insert/form`, `insert/depth` or `insert/count`, each of which says what is missing. */
export function thingOf(wish: InsertWish): Result<Thing> {
  const { kind, count = kind === 'anchor' ? 2 : 1 } = wish;
  const listed = wish.size === undefined ? null : findInsertSize(kind, wish.size);
  if (listed !== null && !listed.ok) return listed;
  const size = listed === null ? null : listed.value;
  const name = size === null ? kind : `${size.name} ${kind}`;
  if (!(Number.isInteger(count) && count >= 1 && count <= MOST_COUNT))
    return fail('insert/count', `The ${name} is counted from 1 to ${MOST_COUNT}: ${count} is none of these.`);
  const each = formOf(wish, size);
  if (each === null)
    return fail('insert/form', `The ${name} needs ${FORM_WORDS[kind]}: give it, or a size that is listed.`);
  const fault = [each, wish.opening]
    .map((one) => (one === undefined ? null : faultOfForm(one)))
    .find((one) => one !== null);
  if (fault !== undefined) return fail('insert/form', `The outline of the ${name} ${fault}: change it.`);
  const depthMm = wish.depthMm ?? size?.depthMm ?? (kind === 'anchor' ? 0 : null);
  if (depthMm === null || !(depthMm >= 0 && depthMm <= 1000) || (depthMm === 0 && kind !== 'anchor'))
    return fail('insert/depth', `The ${name} needs to be told how deep it is, over 0 and at most 1 m.`);
  const stepMm = sizeOfForm(each)[1] + (kind === 'anchor' ? SLOT_BRIDGE_MM : 0);
  if (count > 1 && !['battery', 'anchor', 'lamp'].includes(kind))
    return fail('insert/count', `A ${kind} is let in one by one: place another beside it.`);
  return ok({
    name: count > 1 && kind !== 'anchor' ? `${count} × ${name}` : name,
    form: together(each, count, stepMm),
    each,
    stepMm,
    count,
    depthMm,
    opening: wish.opening ?? size?.opening ?? null,
    panelMm: size?.panelMm ?? null,
    cell: size?.cell ?? (kind === 'battery' ? 'round' : null),
  });
}

const FORM_WORDS: Readonly<Record<InsertKind, string>> = {
  pane: 'the outline of its window',
  lamp: 'a length',
  battery: 'an outline',
  switch: 'the hole in its panel',
  magnet: 'a diameter',
  anchor: 'the width of its webbing',
};

function formOf({ kind, form, lengthMm }: InsertWish, size: InsertSize | null): InsertForm | null {
  if (form !== undefined) return form;
  if (size === null) return null;
  if (size.form === null)
    return size.widthMm === null || lengthMm === undefined
      ? null
      : { shape: 'rectangle', lengthMm, widthMm: size.widthMm };
  // A bare round cell that lies needs its contacts; holders are listed with theirs.
  const isBare = kind === 'battery' && size.form.shape === 'rectangle' && size.form.widthMm === size.depthMm;
  return isBare && size.form.shape === 'rectangle'
    ? { ...size.form, lengthMm: size.form.lengthMm + CONTACTS_MM }
    : size.form;
}

/** Several beside each other along y, in one outline. */
function together(each: InsertForm, count: number, stepMm: number): InsertForm {
  if (count === 1) return each;
  const [lengthMm, widthMm] = sizeOfForm(each);
  return { shape: 'rectangle', lengthMm, widthMm: widthMm + (count - 1) * stepMm };
}
