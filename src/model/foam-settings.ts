import type { FoamId } from '../base/ids.ts';
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
  /** What it is cut from, where that is not the foam of its sheet of the wall; of its outermost sheet alone. */
  readonly foam?: FoamId;
  /** True where the piece is to stay as it is, whatever seams are proposed. */
  readonly held?: boolean;
}

/** Shop rules of the foam step; defaults in {@link FOAM_RULES}, a foam's own in `FoamSheet.rules`. */
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
  /** Width of a kerf, wall to wall, mm [J]: two passes of a fine saw. */
  readonly kerfMm: number;
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
  kerfMm: 3,
};

/** All rules of a foam: its own where it has any, else the usual ones. The same object for rules that are alike. */
export function rulesOf({ rules }: { readonly rules?: Partial<FoamRules> }): FoamRules {
  if (rules === undefined) return FOAM_RULES;
  const whole = { ...FOAM_RULES, ...rules };
  const key = Object.values(whole).join(' ');
  const known = KNOWN.get(key) ?? whole;
  // A maker tries out a few; what is remembered by them is soon forgotten too.
  if (KNOWN.size >= MOST_KNOWN) KNOWN.clear();
  KNOWN.set(key, known);
  return known;
}

const MOST_KNOWN = 64;
const KNOWN = new Map<string, FoamRules>([[Object.values(FOAM_RULES).join(' '), FOAM_RULES]]);
