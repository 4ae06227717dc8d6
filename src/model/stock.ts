import type { FoamId } from '../base/ids.ts';

/** The foam on the maker's shelf, how sheets are filled, and where pieces were put. Kept in the project; each part may be missing. */
export interface StockChoices {
  /** Sheets and offcuts in hand. They are used before any is bought. */
  readonly sheets?: readonly StockSheet[];
  /** At most one for each foam; a foam without one is filled as usual (`USUAL_FILL`). */
  readonly fills?: readonly FillRule[];
  /** At most one for each piece. */
  readonly pieces?: readonly PieceFill[];
  /** A layout that a search found, or a hand, and the maker took. What of it still fits where it lay stays there; the rest is laid anew. */
  readonly kept?: readonly KeptSheet[];
}

/** So many equal sheets, or one offcut. */
export interface StockSheet {
  /** Its own, unlike that of any other. */
  readonly id: string;
  /** What is written on it: `offcut of the helm`. */
  readonly name: string;
  readonly foam: FoamId;
  readonly shape: SheetShape;
  /** In hand, whole, >= 1. */
  readonly count: number;
  /** Places that nothing may be cut from (print, holes, dents): rings of packed x, y, mm, in the sheet's own numbers, any way round. */
  readonly keepOut?: readonly (readonly number[])[];
  /** Which way the length it was rolled in runs, and with it the grain. Missing: along the longer side of its box; y of a square. */
  readonly grain?: 'x' | 'y';
  /**
   * Of an offcut that the layout of this very project leaves: the sheet it is left of. It is not there before that sheet is cut, so that this
   * project is not laid on it; the next one is.
   */
  readonly leftBy?: SheetName;
}

/** Origin lower left, y up, mm. */
export type SheetShape =
  | { readonly kind: 'rectangle'; readonly widthMm: number; readonly heightMm: number }
  /** A traced outline: packed x, y, counter-clockwise, its box beginning at nought. */
  | { readonly kind: 'outline'; readonly points: readonly number[] };

/** Which ways round pieces of a foam may lie: any; with the grain along the sheet, either way; or only as the arrow says. */
export type TurnRule = 'any' | 'half' | 'none';

/** How sheets of one foam are filled. */
export interface FillRule {
  readonly foam: FoamId;
  /** Kept free along the edges of a sheet, which are often bruised, mm, >= 0. */
  readonly borderMm: number;
  /** Kept free between two pieces, mm, >= 0: what the cut takes away. */
  readonly spacingMm: number;
  readonly turns: TurnRule;
  /** True where both sides of the foam are alike, so that a piece may lie with its other side up. */
  readonly turnOver: boolean;
  /** False: no sheet is bought; what does not fit those in hand is said. */
  readonly buys: boolean;
}

/** What was said of one piece's place. */
export interface PieceFill {
  /** Its id (`PieceId`), or that of a strip. */
  readonly piece: string;
  /** Pieces with the same word lie on one sheet. */
  readonly group?: string;
  /** Copies that stay where the maker put them. */
  readonly held?: readonly HeldCopy[];
}

export interface HeldCopy {
  /** 0 for the first. */
  readonly copy: number;
  readonly sheet: SheetName;
  readonly x: number;
  readonly y: number;
  readonly turnRad: number;
  readonly isFlipped?: boolean;
}

/** A sheet in hand by its id, or `buy` for one that is bought, and which of those, from 0. */
export interface SheetName {
  readonly stock: string;
  readonly nth: number;
}

export interface KeptSheet {
  readonly foam: FoamId;
  readonly sheet: SheetName;
  readonly places: readonly KeptPlace[];
}

/** Turned over first where `isFlipped` (x to -x), then turned about the nought of its template, then moved, mm. */
export interface KeptPlace {
  readonly piece: string;
  readonly copy: number;
  readonly x: number;
  readonly y: number;
  readonly turnRad: number;
  readonly isFlipped?: boolean;
}
