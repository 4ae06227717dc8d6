import { runAtOnce, type Stepwise } from '../../base/stepwise.ts';
import type { FoamSheet } from '../../model/foam-stock.ts';
import type { CopyName, OddCopies, SheetLayout } from '../../model/sheet.ts';
import type { FillRule, StockChoices } from '../../model/stock.ts';
import { firstLayoutSteps, type FirstLayout } from './foam-layout.ts';
import { foamTask, type FoamTask, type SheetItem } from './foam-task.ts';
import { HAND_SLACK_MM, LayoutCheck } from './layout-check.ts';
import type { RoomPlaces } from './quick-fit.ts';
import { sheetsOfLayout } from './sheets-of-layout.ts';

export type { SheetItem };

/** What is to be laid on what. */
export interface SheetTask {
  /** Quantity >= 0, whole; the foam must be in `foams`, else RangeError. */
  readonly items: readonly SheetItem[];
  readonly foams: readonly FoamSheet[];
  /** One for each foam, else RangeError. */
  readonly fills: readonly FillRule[];
  readonly stock: StockChoices;
}

/**
 * Lays every copy of every template on sheets of its foam, by true outlines: those in hand first, then as few that are bought as are found, the last of
 * them filled as short. What is held stays, and so does what still fits of a layout that was taken.
 * @returns sheets in the order of `foams`; what has no place is named, never dropped in silence.
 */
export const layOnSheets = (task: SheetTask): SheetLayout => runAtOnce(layOnSheetsSteps(task));

/** The same in stretches. */
export function* layOnSheetsSteps(task: SheetTask): Stepwise<SheetLayout> {
  const laid: (FirstLayout & { readonly task: FoamTask })[] = [];
  for (const one of foamTasks(task, false)) {
    yield;
    laid.push({ task: one, ...(yield* firstLayoutSteps(one, task.stock.kept ?? [])) });
  }
  yield;
  return joinedLayout(task, laid);
}

/** The task of each foam that anything is cut from, in the order of `foams`. */
export function foamTasks({ items, foams, fills, stock }: SheetTask, isWide: boolean): readonly FoamTask[] {
  const lost = items.find((item) => !foams.some((foam) => foam.id === item.foam));
  if (lost !== undefined) throw new RangeError(`piece ${lost.piece} is of foam ${lost.foam}, which is not in the list`);
  return foams.flatMap((foam) => {
    const own = items.filter((item) => item.foam === foam.id && item.quantity > 0);
    if (own.length === 0) return [];
    const fill = fills.find((one) => one.foam === foam.id);
    if (fill === undefined) throw new RangeError(`nothing is said of how sheets of ${foam.id} are filled`);
    return [foamTask(own, foam, fill, stock, isWide)];
  });
}

/** What was laid of each foam as one layout. */
export function joinedLayout(
  { items }: SheetTask,
  laid: readonly { readonly task: FoamTask; readonly places: RoomPlaces; readonly movedOn: readonly number[] }[],
): SheetLayout {
  const names = ({ task }: { readonly task: FoamTask }, list: readonly number[]): readonly CopyName[] =>
    list.map((i) => ({ piece: task.parts[task.copies[i].part].piece, copy: task.copies[i].copy }));
  const tooLarge = new Set(
    laid.flatMap(({ task, places }) =>
      task.copies
        .filter(({ part }, i) => task.isTooLarge[part] && places[i] === null)
        .map(({ part }) => task.parts[part].piece),
    ),
  );
  const odd: OddCopies = {
    unlaid: laid.flatMap((one) =>
      names(
        one,
        one.places.flatMap((place, i) => (place === null && !one.task.isTooLarge[one.task.copies[i].part] ? [i] : [])),
      ),
    ),
    heldBadly: laid.flatMap((one) => names(one, badHolds(one.task))),
    heldNowhere: laid.flatMap((one) => names(one, one.task.heldNowhere)),
    movedOn: laid.flatMap((one) => names(one, one.movedOn)),
  };
  return {
    sheets: laid.flatMap(({ task, places }) => sheetsOfLayout(task, places, new LayoutCheck(task, 0))),
    tooLarge: [...new Set(items.map(({ piece }) => piece))].filter((piece) => tooLarge.has(piece)),
    ...(isNothing(odd) ? {} : { odd }),
  };
}

/** Copies held where they cannot be cut: over another that is held, over a place kept clear, or off the sheet. Its border is the maker's to use. */
function badHolds(task: FoamTask): readonly number[] {
  if (task.held.every((place) => place === null)) return [];
  const check = new LayoutCheck(task, HAND_SLACK_MM);
  const bad = new Set(check.pairs(task.held).flat());
  for (const [i, place] of task.held.entries()) if (place !== null && !check.isWithin(i, place, true)) bad.add(i);
  return [...bad].sort((a, b) => a - b);
}

const isNothing = ({ unlaid, heldBadly, heldNowhere, movedOn }: OddCopies): boolean =>
  [unlaid, heldBadly, heldNowhere, movedOn].every((list) => list.length === 0);
