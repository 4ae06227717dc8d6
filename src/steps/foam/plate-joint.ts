import { rad } from '../../geom/vec.ts';
import type { ShellLayer } from '../../model/shell-layer.ts';

/**
 * A bevel steeper than this is drawn as this, radians: no tool cuts it, and its tangent would carry the edge off the sheet. The bevel itself
 * is still told in full, with a finding.
 */
export const STEEPEST_DRAWN_RAD = rad(75);

/** Heights of a sheet's surfaces over the sculpt, outward, mm. */
export interface Plate {
  readonly faceMm: number;
  readonly neutralMm: number;
  readonly backMm: number;
}

/** How the edge of one plate is cut: bevel from square, radians, positive where the back edge stands inside the face edge, and how far outward of the neutral line its two edges run, mm. */
export interface PlateCut {
  readonly bevel: number;
  readonly faceMm: number;
  readonly backMm: number;
}

export const plateOf = ({ backMm, thicknessMm, neutralFraction }: ShellLayer): Plate => ({
  faceMm: backMm + thicknessMm,
  neutralMm: backMm + neutralFraction * thicknessMm,
  backMm,
});

/** Surfaces this near each other are one, mm: what adding up thicknesses leaves. */
const SAME_HEIGHT_MM = 1e-9;

/** Whether two plates lie between the same surfaces, so that they meet on the plane that halves their fold. */
export const areAlike = (a: Plate, b: Plate): boolean =>
  Math.abs(a.faceMm - b.faceMm) < SAME_HEIGHT_MM && Math.abs(a.backMm - b.backMm) < SAME_HEIGHT_MM;

/** How far a cut of this bevel leans over one millimetre of foam, mm. */
export const leanOf = (bevel: number): number =>
  Math.tan(Math.min(STEEPEST_DRAWN_RAD, Math.max(-STEEPEST_DRAWN_RAD, bevel)));

/** A square edge along the neutral line. */
export const SQUARE_CUT: PlateCut = { bevel: 0, faceMm: 0, backMm: 0 };

/** Cut on the plane that halves the fold (foam model 4): face edge at `(1 - k) t tan(fold / 2)`, back edge at `-k t tan(fold / 2)`. */
export function halvedCut(bevel: number, { faceMm, neutralMm, backMm }: Plate): PlateCut {
  const lean = leanOf(bevel);
  return { bevel, faceMm: (faceMm - neutralMm) * lean, backMm: (backMm - neutralMm) * lean };
}

/**
 * Two plates that meet edge to edge although they lie between other surfaces: each is cut from the line where the faces meet to the line where
 * the backs meet. With the faces together `tan(bevel1) = (t2 - t1 cos fold) / (t1 sin fold)`; the sum of both bevels is the fold.
 */
export const sharedCut = (fold: number, own: Plate, mate: Plate): PlateCut =>
  cutAlong(fold, own, meets(fold, own.faceMm, mate.faceMm), meets(fold, own.backMm, mate.backMm));

/**
 * The plate that stands on the other's inner side and ends there. At a right angle its edge is square, and shorter than the sculpt by the
 * other's thickness; else it leans `fold` less a right angle (a concave fold plus one), and so does {@link throughCut}.
 *
 *     ==========+   <- the plate that runs through ends where the other's outer side does
 *     ------+---|
 *           |   |   <- the standing plate
 */
export function standingCut(fold: number, own: Plate, mate: Plate): PlateCut {
  const inner = fold > 0 ? mate.backMm : mate.faceMm;
  return cutAlong(fold, own, meets(fold, own.faceMm, inner), meets(fold, own.backMm, inner));
}

/** The plate the other stands on: it runs on to the other's outer side, flush with it. */
export function throughCut(fold: number, own: Plate, mate: Plate): PlateCut {
  const outer = fold > 0 ? mate.faceMm : mate.backMm;
  return cutAlong(fold, own, meets(fold, own.faceMm, outer), meets(fold, own.backMm, outer));
}

/**
 * How far out from the seam on the sculpt, in a plate's own plane, height `a` over it meets height `b` over the other plate, mm:
 *
 *      --------a--------+          x = (b - a cos fold) / sin fold; for a = b that is a tan(fold / 2)
 *      -----sculpt---+   \ b
 *                     \   \
 */
const meets = (fold: number, a: number, b: number): number => (b - a * Math.cos(fold)) / Math.sin(fold);

/** @param faceMm,backMm  from the seam on the sculpt, outward. */
function cutAlong(fold: number, own: Plate, faceMm: number, backMm: number): PlateCut {
  const neutralMm = own.neutralMm * Math.tan(fold / 2);
  return {
    bevel: Math.atan2(faceMm - backMm, own.faceMm - own.backMm),
    faceMm: faceMm - neutralMm,
    backMm: backMm - neutralMm,
  };
}
