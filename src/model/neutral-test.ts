/**
 * One bend of the test strip: laid round something round, its ends marked on it, and the arc between the marks measured on the round thing
 * where the foam lay.
 *
 *        ____
 *      /  __  \  foam, flat length L
 *     |  /  \  |
 *     | | d  | |     arc s on the mandrel from mark to mark, under the foam
 *      \ \__/ /
 *       x    x   ends
 */
export interface NeutralReading {
  /** Outside diameter of what the strip was bent round, mm. */
  readonly mandrelMm: number;
  /** Arc on its surface from one end of the strip to the other, mm. */
  readonly arcMm: number;
}

/** What was measured of one foam to find its neutral fraction. */
export interface NeutralTest {
  /** Flat length of the strip along the bend, mm. */
  readonly lengthMm: number;
  /** Thickness of the strip, mm. */
  readonly thicknessMm: number;
  readonly readings: readonly NeutralReading[];
}

/** k as it follows from a test. */
export interface NeutralFit {
  /** 0 to 1, from the inside of the bend. */
  readonly k: number;
  /** Half width of the range that holds k in about 95 of 100 tests. */
  readonly plusMinus: number;
  /** k of each reading by itself, in their order. */
  readonly each: readonly number[];
  /** Indices of readings that stand apart from the others by more than their errors explain. */
  readonly apart: readonly number[];
}
