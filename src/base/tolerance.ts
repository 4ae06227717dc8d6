/** Every small number of the project, with its unit and its reason. */

/** Share of the diagonal within which two corners of a file are one: far under any foam, far over float32 noise. */
export const JOIN_SHARE_OF_DIAGONAL = 1e-6;

/** Float32 steps at the largest coordinate within which two corners are one: a file written in float32 cannot say it finer. */
export const JOIN_FLOAT32_STEPS = 2;

/** A triangle whose area is under this share of its longest side squared is empty: it has no side to be on. */
export const EMPTY_TRIANGLE_SHARE = 1e-12;

/** Seam sides agree when they differ by no more than the larger of these (foam model 4: a shop's eye and tape). */
export const SEAM_DIFFERENCE_MM = 0.5;
export const SEAM_DIFFERENCE_SHARE = 0.0025;

/** Largest distance by which a seam's two sides may run apart between two match marks, mm (foam model 4). */
export const SEAM_SLIP_BETWEEN_MARKS_MM = 1.5;

/** Longest stretch of seam without a match mark, mm (foam model 4). */
export const MARK_SPACING_MM = 80;

/** Numbers written to reports are rounded to this many decimals of a mm where only people read them. */
export const DISPLAY_DECIMALS = 2;

/**
 * Share of the diagonal from which {@link JOIN_FLOAT32_STEPS} are too coarse to join by: the sculpt lies so far from the origin that
 * single precision would merge what the eye can tell apart, at 1 m one millimetre.
 */
export const FAR_SHARE_OF_DIAGONAL = 1e-3;

/**
 * Share of a polygon's size by which a corner may stand off the line between its neighbours and still lie on a straight side: there it
 * would make a triangle without area. Far over the rounding of coordinates (1e-16), and under the single precision of files (1e-7), in
 * which such a corner is a real one.
 */
export const STRAIGHT_CORNER_SHARE = 1e-9;

/** Share of a polygon's size squared that its triangles may lie turned over before the cut counts as wrong: rounding, times the size. */
export const TURNED_OVER_SHARE = 1e-8;

/**
 * Share of its longest side by which a corner of a polygon may stand off the polygon's plane: beyond it the area depends on how the
 * polygon is cut, by about the square of this, so by more than the 1e-6 that facts are good to at ten times this much.
 */
export const BENT_FACE_SHARE = 1e-4;

/** Share of the diagonal under which a hole is likelier a fault than a rim of the foam: 2 cm on a sculpt of 1 m. */
export const SMALL_HOLE_SHARE = 0.02;

/**
 * Price of seam length that a maker is served by, in units of the energy (4 = isometry) for a seam 100 % wrong all along. On the samples
 * the sides of a seam differ by up to 5.0 mm at 0, 1.7 at 10, 0.25 at 100 and 0.03 at 1000, while the greatest stretch of the helm goes
 * from 1.9 to 3.9, 4.8 and 4.9 %; strongly domed pieces need the more.
 */
export const SEAM_PRICE = 300;

/**
 * A gap or overlap between two finished edges up to this much, mm, closes under contact glue without a trace: what a hand knife strays
 * anyhow [shop rule], and the same as seam sides may differ in length.
 */
export const DRY_FIT_MM = 0.5;

/** A step in the surface smaller than this, mm, is felt by nobody and not worth a word: less than a brushed coat of paint hides. */
export const FELT_STEP_MM = 0.05;

/**
 * Share of a side within which a line over the surface goes through the side's end, and weight of a corner under which a place lies on the
 * side across: far over the rounding of unfolded triangles (1e-13), far under the single precision of files (1e-7).
 */
export const LINE_SNAP_SHARE = 1e-9;
