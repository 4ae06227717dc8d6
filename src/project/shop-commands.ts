import type { FoamId } from '../base/ids.ts';
import type { Coating } from '../model/coatings.ts';
import { GLUES, type Glue } from '../model/glues.ts';
import type { SeamOfPieces, ShopChoices } from '../model/shop-choices.ts';
import { onSculpt, type Command } from './commands.ts';
import type { Project } from './project.ts';

/** Glues that can be called by a name; their figures are those of shared/glues.json. */
export const GLUE_NAMES: readonly string[] = GLUES.map(({ id }) => id);

/** @throws RangeError where none has that name: ask {@link GLUE_NAMES} first. */
export function glueNamed(name: string): Glue {
  const glue = GLUES.find(({ id }) => id === name);
  if (glue === undefined) throw new RangeError(`no glue ${name}`);
  return glue;
}

/** Takes a glue, as its label says. */
export const setGlue = (glue: Glue): Command => onShop('choose the glue', (shop) => ({ ...shop, glue }));

/** What the finished prop is coated with, in the order in which it is put on; none: it stays bare. */
export const setCoatings = (coatings: readonly Coating[]): Command =>
  onShop('choose the coats', (shop) => ({ ...shop, coatings }));

/** What prices are in, as it is to be written; empty: no costs are told. */
export const setCurrency = (currency: string): Command =>
  onShop('choose the currency', ({ currency: before, ...shop }) => {
    const after = currency.trim();
    if (after === (before ?? '')) return { ...shop, ...(before === undefined ? {} : { currency: before }) };
    return after === '' ? shop : { ...shop, currency: after };
  });

/** What a sheet of a foam costs; null: it is not known. @param price >= 0. */
export const setSheetPrice = (foam: FoamId, price: number | null): Command =>
  onShop('set the price of a sheet', ({ sheetPrices = [], ...shop }) => {
    const others = sheetPrices.filter((one) => one.foam !== foam);
    const prices = price === null ? others : [...others, { foam, price }];
    return prices.length === 0 ? shop : { ...shop, sheetPrices: prices };
  });

/** What a litre of the glue costs; null: it is not known. @param price >= 0. */
export const setGluePrice = (price: number | null): Command =>
  onShop('set the price of the glue', ({ gluePricePerL: _, ...shop }) =>
    price === null ? shop : { ...shop, gluePricePerL: price },
  );

/**
 * Accepts an order of gluing: it is kept as far as it can be when seams change.
 * @param order every seam of the innermost sheet, the one to be glued first, first. An empty one: it is found anew.
 */
export const acceptGluing = (order: readonly SeamOfPieces[]): Command =>
  onSculpt(order.length === 0 ? 'find the order of gluing anew' : 'change the order of gluing', (part) => {
    const { gluing, ...rest } = part;
    if (isSame(gluing ?? [], order)) return part;
    return order.length === 0 ? rest : { ...rest, gluing: order };
  });

/** An order with one seam taken out and put in before another place. @param from, to places from 0; `to` counts without the seam that moves. */
export function movedInOrder(order: readonly SeamOfPieces[], from: number, to: number): readonly SeamOfPieces[] {
  const others = order.filter((_, i) => i !== from);
  return from in order ? [...others.slice(0, to), order[from], ...others.slice(to)] : order;
}

const isSame = (a: readonly SeamOfPieces[], b: readonly SeamOfPieces[]): boolean =>
  JSON.stringify(a.map(({ pieces, nth }) => [pieces, nth])) ===
  JSON.stringify(b.map(({ pieces, nth }) => [pieces, nth]));

/** Changes what is said of the bench; words that say nothing are left out of the document. */
export function onShop(label: string, change: (shop: ShopChoices) => ShopChoices, mergeKey?: string): Command {
  return {
    label,
    ...(mergeKey === undefined ? {} : { mergeKey }),
    apply(project: Project): Project {
      const { shop = {}, ...rest } = project;
      const next = change(shop);
      if (JSON.stringify(next) === JSON.stringify(shop)) return project;
      return Object.keys(next).length === 0 ? rest : { ...rest, shop: next };
    },
  };
}
