import type { Sheet } from '../model/sheet.ts';
import type { KeptSheet } from '../model/stock.ts';

/** What a search for a better layout has come to. */
export interface FoundLayout {
  readonly sheets: readonly Sheet[];
  /** The same as the project keeps it. */
  readonly kept: readonly KeptSheet[];
  readonly figures: LayoutFigures;
}

/** What a layout comes to, over all foams. */
export interface LayoutFigures {
  /** Copies without a place. */
  readonly unlaid: number;
  readonly bought: number;
  readonly sheets: number;
  /** How far the last sheet of each foam is filled, all together, mm. */
  readonly lastMm: number;
  /** Foam that becomes pieces, of all that lies before the end of the last piece on each sheet that is last, and of all the others, per cent. */
  readonly densityPct: number;
}

/** A search that goes on until it is ended. */
export interface SheetSearchRun {
  /** Ends it; nothing more is told. */
  end(): void;
}

/** What a search tells. */
export interface SheetSearchHearing {
  /** The layout it begins with, then each that is better. */
  found(layout: FoundLayout): void;
  /** How many moves were made in all. */
  looked(moves: number): void;
  /** Nothing better comes: no piece can move. @param isBroken  every thread broke off, so that nothing is known of what could be found */
  ended(isBroken: boolean): void;
}

/** What goes to a thread: first what is laid on what (as `sheetTaskOf` gives it), then layouts that others found. */
export type ToSheetSearch<Task> =
  | { readonly kind: 'begin'; readonly task: Task; readonly seed: number }
  | { readonly kind: 'offer'; readonly kept: readonly KeptSheet[] };

/** What comes from it. */
export type FromSheetSearch =
  | { readonly kind: 'found'; readonly layout: FoundLayout; readonly moves: number }
  | { readonly kind: 'looked'; readonly moves: number }
  | { readonly kind: 'ended' };
