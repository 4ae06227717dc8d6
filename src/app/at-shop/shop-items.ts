import type { LengthUnit } from '../../base/format-length.ts';
import type { StepDone } from '../../project/project.ts';
import type { ShopView } from '../../worker/shop-api.ts';
import type { Bench } from '../bench-state.ts';
import { quantityRows } from '../quantity-rows.ts';
import { QUANTITY_WORDS } from '../quantity-words.ts';
import { sizeText } from '../stock-words.ts';
import { AT_SHOP_WORDS } from './at-shop-words.ts';

/** Something to buy. */
export interface ShopItem {
  /** Of the step that is ticked when it is bought. */
  readonly id: string;
  readonly what: string;
  /** How much, with the size of sheets. */
  readonly much: string;
  /** The same as a figure: sheets, or ml. */
  readonly amount: number;
  readonly isFoam: boolean;
}

/** All that is still in the shop for a job; what is in hand is left out. */
export function shopItems({ quantities, finish }: ShopView, bench: Bench, unit: LengthUnit): readonly ShopItem[] {
  return quantityRows(quantities, finish.plan, unit).flatMap(({ id, what, much, toBuy }) => {
    if (!(toBuy > 0)) return [];
    const foam = quantities.foams.find((one) => `foam/${one.foam}/${one.thicknessMm}` === id);
    const text = foam === undefined ? much : AT_SHOP_WORDS.sheets(QUANTITY_WORDS.table.sheets(toBuy, 0), sizes());
    return [{ id: `buy/${id}`, what, much: text, amount: toBuy, isFoam: foam !== undefined }];

    function sizes(): string {
      // A name that tells the size of its sheets tells it once.
      const bought = (bench.sheets?.sheets ?? []).filter(
        ({ label, foam: own, widthMm, heightMm }) =>
          label === undefined && own === foam?.foam && ![widthMm, heightMm].every((mm) => what.includes(String(mm))),
      );
      return [...new Set(bought.map(({ widthMm, heightMm }) => sizeText(widthMm, heightMm, unit)))].join(', ');
    }
  });
}

/** Volumes differ by a drop when a seam moves: so much more than was bought is no reason to go to the shop again. */
const SPARE_SHARE = 0.1;

/** How much of it was bought, and whether that is enough by now. */
export function boughtOf(
  steps: readonly StepDone[] | undefined,
  { id, amount, isFoam }: ShopItem,
): { readonly state: 'open' | 'done' | 'short'; readonly have: number } {
  const as = steps?.find((step) => step.id === id)?.as;
  if (as === undefined) return { state: 'open', have: 0 };
  const have = Number(as);
  return { state: have * (isFoam ? 1 : 1 + SPARE_SHARE) >= amount ? 'done' : 'short', have };
}

/** The list as text, for a message. */
export function shopText(job: string, items: readonly ShopItem[], steps: readonly StepDone[] | undefined): string {
  const words = AT_SHOP_WORDS;
  return [
    words.title(job),
    ...items.map((item) => words.line(boughtOf(steps, item).state === 'done', item.much, item.what)),
  ].join('\n');
}
