/**
 * How a printer prints, found by measuring the square of the scale page: what a mm of the page becomes on paper.
 *
 *     paper = ( across   up · sin lean ) page        lean > 0: what goes up leans to the right
 *             (   0      up · cos lean )
 */
export interface PrinterProfile {
  /** What the maker calls it; two do not share a name. */
  readonly name: string;
  /** 1 for a printer that is true; 0.97 for one that prints 3 % short. */
  readonly acrossShare: number;
  readonly upShare: number;
  /** Radians; 0 where the two directions stand square. */
  readonly leanRad: number;
}

/** What a ruler reads on the printed square, mm. */
export interface ScaleReadings {
  /** Length that the page says: 100, or 50 on small paper. */
  readonly nominalMm: number;
  readonly acrossMm: number;
  readonly upMm: number;
  /** Corner to corner, from lower left to upper right and from upper left to lower right; both or none. */
  readonly diagonals?: { readonly risingMm: number; readonly fallingMm: number };
}
