/** A sheet bent round an inside radius. */
export interface Bend {
  /** How far it turns, radians, 0 to less than pi. */
  readonly angle: number;
  /** Radius of its inside, mm, >= 0. */
  readonly insideRadius: number;
  readonly thickness: number;
  /** k: place of the neutral surface from the inside, share of the thickness, 0 to 1. */
  readonly neutralFraction: number;
}

/**
 * Length of flat sheet that goes into a bend, mm: the neutral arc, `angle (r + k t)` (bend allowance of the sheet-metal handbooks; published
 * worked case: 90 degrees, r = t = 0.125 in, k 0.44 give 0.2827 in).
 */
export const bendAllowance = ({ angle, insideRadius, thickness, neutralFraction }: Bend): number =>
  angle * (insideRadius + neutralFraction * thickness);

/** From the corner where the outsides of both legs would meet to where the bend begins, mm: `(r + t) tan(angle / 2)`. */
export const outsideSetback = ({ angle, insideRadius, thickness }: Bend): number =>
  (insideRadius + thickness) * Math.tan(angle / 2);

/** How much shorter the flat sheet is than both legs measured to that corner, mm: twice the setback less the allowance. */
export const bendDeduction = (bend: Bend): number => 2 * outsideSetback(bend) - bendAllowance(bend);
