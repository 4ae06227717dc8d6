import type { FoamId, PieceId } from '../base/ids.ts';

/** Where one template lies: turned by `turnRad` about the origin of its own drawing, then moved by `x`, `y`, mm. */
export interface Placement {
  readonly piece: PieceId;
  /** 0 for the first copy, 1 for the next. */
  readonly copy: number;
  readonly x: number;
  readonly y: number;
  readonly turnRad: number;
}

/** One sheet of foam with what is cut from it, mm, origin lower left, y up. */
export interface Sheet {
  readonly foam: FoamId;
  readonly thicknessMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly placements: readonly Placement[];
  /** Share of the sheet that is used, 0 to 1. */
  readonly usedShare: number;
}

/** What lies where on foam, and what does not fit any sheet. */
export interface SheetLayout {
  readonly sheets: readonly Sheet[];
  readonly tooLarge: readonly PieceId[];
}
