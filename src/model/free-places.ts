import type { PieceId } from '../base/ids.ts';

/** One piece on one sheet, turned as it is to lie. */
export interface FreeAsk {
  readonly piece: PieceId;
  readonly copy: number;
  /** Index of the sheet among those of the layout. */
  readonly sheet: number;
  readonly turnRad: number;
  readonly isFlipped: boolean;
}

/**
 * Where the nought of a piece's template may be on a sheet while all others stay, mm. All lists are rings of packed x, y, outer ones
 * counter-clockwise and holes clockwise.
 */
export interface FreePlaces {
  /** Where it may be; on their borders it touches what is beside it, with the spacing between. */
  readonly free: readonly Float64Array[];
  /** Where it would lie over another piece, for each of them. */
  readonly blocks: readonly FreeBlock[];
}

export interface FreeBlock {
  /** The piece it would lie over; null for a place that is kept clear. */
  readonly piece: PieceId | null;
  readonly copy: number;
  readonly rings: readonly Float64Array[];
}
