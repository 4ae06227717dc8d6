import type { Stepwise } from '../../base/stepwise.ts';
import type { Ring } from '../../geom/ring.ts';
import type { Size2 } from '../../geom/shelf-pack.ts';
import type { Move2 } from '../../geom/turn-and-move.ts';

/** Where something lies: turned about the origin of its own numbers, then moved, mm from the lower left of its room. */
export interface NestedPlace {
  /** Index of the outline. */
  readonly index: number;
  /** Index of the sheet or room. */
  readonly room: number;
  readonly move: Move2;
}

/** A rectangle some of which is taken, mm from its lower left. */
export interface PartlyTaken extends Size2 {
  /** Outlines, counter-clockwise, that nothing may lie over; they may reach out of the rectangle. */
  readonly taken: readonly Ring[];
}

/** Lays outlines side by side so that none lies over another. The same input gives the same places. */
/** Both are found in stretches of one outline or one move. */
export interface PaperNester {
  /**
   * On as few equal rectangles as are found.
   * @param outlines counter-clockwise, mm; what is inside one is taken.
   * @param gapMm    between two outlines.
   * @returns null where one of them fits no rectangle.
   */
  readonly onSheets: (
    outlines: readonly Ring[],
    sheet: Size2,
    gapMm: number,
  ) => Stepwise<readonly NestedPlace[] | null>;
  /** Into what is left of rooms, the largest first; what finds no place is left out. */
  readonly inRooms: (
    outlines: readonly Ring[],
    rooms: readonly PartlyTaken[],
    gapMm: number,
  ) => Stepwise<readonly NestedPlace[]>;
}
