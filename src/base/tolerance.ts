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
