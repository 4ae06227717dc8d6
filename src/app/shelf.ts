import type { FoamId } from '../base/ids.ts';
import type { StockSheet } from '../model/stock.ts';

/** Foam that this browser knows to lie on the shelf, whatever the job: what earlier jobs left. Ids are of no account. */
export type Shelf = readonly StockSheet[];

/** The same thing on the shelf, or in a job: of one foam, with one name and of one shape. */
export const isSame = (one: StockSheet, other: StockSheet): boolean =>
  one.foam === other.foam && one.name === other.name && JSON.stringify(one.shape) === JSON.stringify(other.shape);

/** The shelf once a sheet was cut: what is left of it is there, and one less of what it was cut from. */
export function shelfAfterCut(shelf: Shelf, cut: StockSheet | null, { leftBy: _, ...rest }: StockSheet): Shelf {
  return [...(cut === null ? shelf : oneLess(shelf, cut)).filter((one) => !isSame(one, rest)), rest];
}

/** The shelf before it was: what is left of it is not there, and what it was cut from is whole again. */
export function shelfBeforeCut(shelf: Shelf, cut: StockSheet | null, left: StockSheet): Shelf {
  const others = shelf.filter((one) => !isSame(one, left));
  if (cut === null) return others;
  const known = others.find((one) => isSame(one, cut));
  if (known === undefined) return [...others, { ...cut, count: 1 }];
  return others.map((one) => (one === known ? { ...one, count: one.count + 1 } : one));
}

function oneLess(shelf: Shelf, cut: StockSheet): Shelf {
  return shelf.flatMap((one) => {
    if (!isSame(one, cut)) return [one];
    return one.count > 1 ? [{ ...one, count: one.count - 1 }] : [];
  });
}

/** What of the shelf a job could take: of its foam, and not in it yet. */
export const shelfFor = (shelf: Shelf, foam: FoamId, own: readonly StockSheet[]): Shelf =>
  shelf.filter((sheet) => sheet.foam === foam && !own.some((one) => isSame(one, sheet)));
