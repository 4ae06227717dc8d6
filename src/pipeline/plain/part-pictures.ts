import type { Stepwise } from '../../base/stepwise.ts';
import type { Drawing } from '../../model/template.ts';
import { formPicture } from '../../steps/shop/form-picture.ts';
import type { Outcome } from '../outcome.ts';
import type { PictureSize } from '../shop-pictures.ts';

/** A form of more triangles is not drawn: its lines would run together, and it would be waited for. */
const MOST_TRIANGLES = 20_000;

/** A picture of each part that no sculpt was parted for and that has a form, by its id. */
export function* partPictureSteps(
  { plain }: Pick<Outcome, 'plain'>,
  { widthMm, heightMm }: PictureSize,
): Stepwise<ReadonlyMap<string, Drawing>> {
  const pictures = new Map<string, Drawing>();
  for (const { part, work } of plain) {
    const form = work?.form ?? null;
    if (form === null || form.triangles.length > 3 * MOST_TRIANGLES) continue;
    pictures.set(part.id, formPicture(form, widthMm, heightMm));
    yield;
  }
  return pictures;
}
