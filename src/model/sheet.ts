import type { FoamId, PieceId } from '../base/ids.ts';
import type { SeamPath } from './seams.ts';
import type { SheetName } from './stock.ts';

/**
 * Where one template lies: turned over first where `isFlipped` (x to -x), then turned by `turnRad` about the origin of its own drawing, then moved by
 * `x`, `y`, mm.
 */
export interface Placement {
  readonly piece: PieceId;
  /** 0 for the first copy, 1 for the next. */
  readonly copy: number;
  readonly x: number;
  readonly y: number;
  readonly turnRad: number;
  /** Missing: it lies with its traced side up. */
  readonly isFlipped?: boolean;
  /** True where it stays because the maker put it there. */
  readonly isHeld?: boolean;
}

/** One sheet of foam with what is cut from it, mm, origin lower left, y up. */
export interface Sheet {
  readonly foam: FoamId;
  /** In hand, or the first, second … that is bought. */
  readonly name: SheetName;
  /** What is written on it; missing on one that is bought. */
  readonly label?: string;
  readonly thicknessMm: number;
  /** Of its box, where it is no rectangle. */
  readonly widthMm: number;
  readonly heightMm: number;
  /** A traced outline, packed x, y, counter-clockwise; missing: a rectangle. */
  readonly outline?: readonly number[];
  /** Places that nothing may be cut from; missing: none. */
  readonly keepOut?: readonly (readonly number[])[];
  readonly placements: readonly Placement[];
  /** Share of the sheet that is used, 0 to 1. */
  readonly usedShare: number;
  /** Which way its length runs: it is filled from the left (`x`) or from below (`y`). */
  readonly fillAlong: 'x' | 'y';
  /** How far along it is filled, from its edge to the end of the last piece, mm. */
  readonly filledMm: number;
  /** The largest rectangle behind the last piece, where it is worth keeping. */
  readonly offcut?: OffcutPlace;
}

/** A rectangle of a sheet, mm. */
export interface OffcutPlace {
  readonly x: number;
  readonly y: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** A copy of a piece. */
export interface CopyName {
  readonly piece: PieceId;
  readonly copy: number;
}

/** What lies where on foam, and what does not fit any sheet. */
export interface SheetLayout {
  /** By foams, sheets in hand first; the one that is filled last is the last of its foam. */
  readonly sheets: readonly Sheet[];
  /** Pieces that are larger than any sheet there is. */
  readonly tooLarge: readonly PieceId[];
  /** How pieces that are too large may be parted; missing: none is, or no way was found. */
  readonly splits?: readonly SplitPath[];
  /** Copies that want a word to the maker. Missing: none. */
  readonly odd?: OddCopies;
}

/** A straight line across a flat piece, as a seam on the sculpt. */
export interface SplitPath {
  readonly piece: PieceId;
  readonly lengthMm: number;
  /** Whether both parts then fit a sheet; else one does, and the other is parted once more. */
  readonly doBothFit: boolean;
  readonly path: SeamPath;
}

export interface OddCopies {
  /** For which the sheets in hand have no room, where none may be bought. */
  readonly unlaid: readonly CopyName[];
  /** Held where they lie over another that is held, over a place kept clear, or off the sheet. */
  readonly heldBadly: readonly CopyName[];
  /** To be held on a sheet that is not there: they were laid anew. */
  readonly heldNowhere: readonly CopyName[];
  /** Of a layout that was taken, laid anew because they no longer fit where they lay. */
  readonly movedOn: readonly CopyName[];
}
