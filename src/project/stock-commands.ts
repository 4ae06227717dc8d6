import type { FoamId } from '../base/ids.ts';
import type { FillRule, HeldCopy, KeptSheet, PieceFill, StockChoices, StockSheet } from '../model/stock.ts';
import type { Command } from './commands.ts';
import { FILL_LIMITS, fillOf, isUsualFill } from './fill-rule.ts';
import { BOUGHT, isCleanStockSheet } from './stock-sheet.ts';

/**
 * Puts a sheet into stock, last. @param sheet as `cleanStockSheet` leaves it, with an id that no other has (`newStockId`), else RangeError.
 */
export const addStockSheet = (sheet: StockSheet): Command =>
  onSheets('add a sheet in hand', (sheets) => {
    if (sheets.some(({ id }) => id === sheet.id)) throw new RangeError(`two sheets have the id ${sheet.id}`);
    return [...sheets, clean(sheet)];
  });

/**
 * Changes what is said of a sheet in hand; of one that is not there nothing.
 * @param sheet the whole of it, as `cleanStockSheet` leaves it, under the id of the one it takes the place of.
 */
export const changeStockSheet = (sheet: StockSheet, mergeKey?: string): Command => ({
  ...onSheets('change a sheet in hand', (sheets) => {
    const was = sheets.find(({ id }) => id === sheet.id);
    if (was === undefined || JSON.stringify(was) === JSON.stringify(sheet)) return sheets;
    return sheets.map((one) => (one === was ? clean(sheet) : one));
  }),
  ...(mergeKey === undefined ? {} : { mergeKey }),
});

/** Takes a sheet out of stock, and lets go what was held on it. */
export const removeStockSheet = (id: string): Command =>
  onStock('take a sheet out of stock', (stock) => {
    const sheets = (stock.sheets ?? []).filter((sheet) => sheet.id !== id);
    if (sheets.length === (stock.sheets ?? []).length) return stock;
    const pieces = (stock.pieces ?? [])
      .map((piece) =>
        withHeld(
          piece,
          (piece.held ?? []).filter(({ sheet }) => sheet.stock !== id),
        ),
      )
      .filter(isSaid);
    return { ...stock, sheets, pieces };
  });

/** Says how sheets of a foam are filled. Values beyond `FILL_LIMITS` are the caller's mistake and throw a RangeError. */
export const setFillRule = (foam: FoamId, change: Partial<Omit<FillRule, 'foam'>>): Command => ({
  ...onStock('change how sheets are filled', (stock) => {
    const was = fillOf(stock, foam);
    const fill = { ...was, ...change };
    for (const key of ['borderMm', 'spacingMm'] as const)
      if (!(fill[key] >= 0 && fill[key] <= FILL_LIMITS[key])) throw new RangeError(`${key} ${fill[key]}`);
    if (JSON.stringify(fill) === JSON.stringify(was)) return stock;
    const others = (stock.fills ?? []).filter((one) => one.foam !== foam);
    return { ...stock, fills: isUsualFill(fill) ? others : [...others, fill] };
  }),
  mergeKey: `fill ${foam} ${Object.keys(change).join(' ')}`,
});

/** Holds a copy of a piece where it was put. */
export const holdCopy = (piece: string, held: HeldCopy, mergeKey?: string): Command => ({
  ...onPiece('hold a piece on its sheet', piece, (fill) => {
    const was = fill.held?.find(({ copy }) => copy === held.copy);
    if (was !== undefined && JSON.stringify(was) === JSON.stringify(held)) return fill;
    const others = (fill.held ?? []).filter(({ copy }) => copy !== held.copy);
    return withHeld(
      fill,
      [...others, held].sort((a, b) => a.copy - b.copy),
    );
  }),
  ...(mergeKey === undefined ? {} : { mergeKey }),
});

/** Lets a copy go: it lies where the layout puts it. */
export const releaseCopy = (piece: string, copy: number): Command =>
  onPiece('let a piece on its sheet go', piece, (fill) => {
    const held = (fill.held ?? []).filter((one) => one.copy !== copy);
    return held.length === (fill.held ?? []).length ? fill : withHeld(fill, held);
  });

/** Keeps pieces on one sheet. @param group a word that they share; null: each goes where it may. */
export const groupPieces = (pieces: readonly string[], group: string | null): Command =>
  onStock(group === null ? 'let pieces go apart' : 'keep pieces on one sheet', (stock) =>
    pieces.reduce(
      (changed, piece) =>
        withPiece(changed, piece, (fill) => {
          if ((fill.group ?? null) === group) return fill;
          const { group: _, ...rest } = fill;
          return group === null ? rest : { ...rest, group };
        }),
      stock,
    ),
  );

/** Takes a layout that was found. It counts for as long as it fits the pieces. */
export const keepLayout = (kept: readonly KeptSheet[]): Command =>
  onStock('take the layout', (stock) =>
    JSON.stringify(stock.kept ?? []) === JSON.stringify(kept) ? stock : { ...stock, kept },
  );

/** Lays pieces out anew. */
export const forgetLayout = (): Command =>
  onStock('lay the pieces out anew', (stock) => {
    const { kept, ...rest } = stock;
    return kept === undefined ? stock : rest;
  });

/**
 * Puts what a layout leaves into stock, for the next project. This one is not laid on it.
 * @param sheet with `leftBy` set, else RangeError. One that is left by the same sheet gives way to it.
 */
export const keepOffcut = (sheet: StockSheet): Command =>
  onSheets('put the offcut into stock', (sheets) => {
    const { leftBy } = sheet;
    if (leftBy === undefined) throw new RangeError(`the offcut ${sheet.id} is left by no sheet`);
    const isOfSame = ({ foam, leftBy: other }: StockSheet): boolean =>
      other?.stock === leftBy.stock && other.nth === leftBy.nth && foam === sheet.foam;
    return [...sheets.filter((one) => !isOfSame(one)), clean(sheet)];
  });

/** The sheet itself: an unclean one is the caller's mistake. */
function clean(sheet: StockSheet): StockSheet {
  if (sheet.id === BOUGHT || !isCleanStockSheet(sheet)) throw new RangeError(`sheet ${sheet.id} is not clean`);
  return sheet;
}

function onStock(label: string, change: (stock: StockChoices) => StockChoices): Command {
  return {
    label,
    apply(project) {
      const { stock = NONE, ...rest } = project;
      const changed = change(stock);
      if (changed === stock) return project;
      const full = Object.fromEntries(
        Object.entries(changed as Record<string, readonly unknown[] | undefined>).filter(
          ([, list]) => list !== undefined && list.length > 0,
        ),
      );
      return Object.keys(full).length === 0 ? rest : { ...rest, stock: full };
    },
  };
}

const NONE: StockChoices = {};

const onSheets = (label: string, change: (sheets: readonly StockSheet[]) => readonly StockSheet[]): Command =>
  onStock(label, (stock) => {
    const { sheets = NO_SHEETS } = stock;
    const changed = change(sheets);
    return changed === sheets ? stock : { ...stock, sheets: changed };
  });

const NO_SHEETS: readonly StockSheet[] = [];

const onPiece = (label: string, piece: string, change: (fill: PieceFill) => PieceFill): Command =>
  onStock(label, (stock) => withPiece(stock, piece, change));

function withPiece(stock: StockChoices, piece: string, change: (fill: PieceFill) => PieceFill): StockChoices {
  const { pieces = [] } = stock;
  const was = pieces.find((one) => one.piece === piece) ?? { piece };
  const now = change(was);
  if (now === was) return stock;
  const others = pieces.filter((one) => one.piece !== piece);
  return { ...stock, pieces: isSaid(now) ? [...others, now] : others };
}

const isSaid = ({ group, held }: PieceFill): boolean => group !== undefined || held !== undefined;

/** A piece with other copies held; where nothing is said of it any more, its name alone. */
function withHeld({ held: _, ...rest }: PieceFill, held: readonly HeldCopy[]): PieceFill {
  return held.length === 0 ? rest : { ...rest, held };
}
