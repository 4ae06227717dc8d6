import { rad } from '../../geom/vec.ts';
import type { PieceFold } from '../../model/foam-piece.ts';
import type { FoamRules } from '../../model/foam-settings.ts';
import type { FoldGroove } from '../../model/grooves.ts';
import { foldLines } from './fold-lines.ts';
import type { PatchBend } from './part-bends.ts';

/**
 * The groove that closes on a fold: walls as far apart in angle as the fold turns, down to the hinge.
 * @param foldDeg     signed, convex > 0.
 * @param thicknessMm of the foam.
 * @param hingeMm     what is left of the foam, over 0.
 * @returns undefined where the foam is no thicker than the hinge: such foam is folded as it is.
 */
export function grooveOf(foldDeg: number, thicknessMm: number, hingeMm: number): FoldGroove | undefined {
  const depthMm = thicknessMm - hingeMm;
  if (depthMm <= 0) return undefined;
  const includedDeg = Math.abs(foldDeg);
  return {
    includedDeg,
    widthMm: 2 * depthMm * Math.tan(rad(includedDeg) / 2),
    depthMm,
    hingeMm,
    side: foldDeg > 0 ? 'back' : 'face',
  };
}

/** The folds of a piece, each with its groove where the piece bends by grooves. */
export function pieceFolds(
  { surface, choice }: PatchBend,
  uv: Float64Array,
  thicknessMm: number,
  rules: FoamRules,
): readonly PieceFold[] {
  // Kerfs take the place of folds.
  if (choice.style === 'kerfed') return [];
  const isRolled = choice.style === 'rolled';
  const folds = foldLines(surface, uv, rules.foldLimitDeg, isRolled);
  if (isRolled) return folds;
  return folds.map((fold) => {
    const groove = grooveOf(fold.angleDeg, thicknessMm, rules.hingeMm);
    return groove === undefined ? fold : { ...fold, groove };
  });
}
