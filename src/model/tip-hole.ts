import type { Vec2 } from '../geom/vec.ts';

/** A small round hole at the end of a dart, where the foam would tear on. */
export interface TipHole {
  /** Corner of the sculpt the dart ends at, file number. */
  readonly corner: number;
  /** mm, over 0. */
  readonly diameterMm: number;
}

/** Such a hole on one piece, in the piece's frame. */
export interface PieceTipHole extends TipHole {
  /** Its middle, mm. */
  readonly at: Vec2;
}
