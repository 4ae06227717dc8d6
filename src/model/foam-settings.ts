import { MARK_SPACING_MM } from '../base/tolerance.ts';
import type { GrainWish } from './flatten-settings.ts';
import type { BendStyle, TracedSide } from './foam-piece.ts';

/** Wishes for one piece, tied to a polygon of the file that lies in it, so that they survive a change of seams. */
export interface PieceSetting {
  readonly face: number;
  readonly name?: string;
  readonly quantity?: number;
  readonly bendStyle?: BendStyle;
  readonly tracedSide?: TracedSide;
  readonly grain?: GrainWish;
}

/** Shop rules of the foam step; defaults in {@link FOAM_RULES}. */
export interface FoamRules {
  /** A fold inside a piece sharper than this is a crease to groove and draw, degrees [J]. */
  readonly foldLimitDeg: number;
  /** Steepest lean of blade or saw table, degrees (common practice: 45 on bandsaws). */
  readonly bevelLimitDeg: number;
  /** Longest stretch of seam without a match mark, mm. */
  readonly markSpacingMm: number;
  /** A seam shorter than this needs no match mark: its ends say enough, mm [J]. */
  readonly markLeastSeamMm: number;
  /** A panel whose surface leans no more than this from its mean is nearly flat, degrees [J]. */
  readonly panelFlatDeg: number;
  /** A piece narrower than this many thicknesses is hard to cut and to glue [J]. */
  readonly narrowThicknesses: number;
  /** What is left of the foam under a groove, mm [J]: 1.5 bends without tearing and holds. */
  readonly hingeMm: number;
  /** A hinge thinner than this tears when it is bent, mm [J]. */
  readonly leastHingeMm: number;
}

export const FOAM_RULES: FoamRules = {
  foldLimitDeg: 20,
  bevelLimitDeg: 45,
  markSpacingMm: MARK_SPACING_MM,
  markLeastSeamMm: 25,
  panelFlatDeg: 10,
  narrowThicknesses: 3,
  hingeMm: 1.5,
  leastHingeMm: 1,
};
