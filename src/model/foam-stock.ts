import type { FoamId } from '../base/ids.ts';
import type { BendLimits } from './bend-check.ts';
import type { HeatShrinkage } from './flatten-settings.ts';
import type { FoamRules } from './foam-settings.ts';
import type { NeutralTest } from './neutral-test.ts';

/** A foam the maker can buy, as data. Limits are shop rules [J] and editable (foam model 3). */
export interface FoamSheet {
  readonly id: FoamId;
  readonly name: string;
  readonly thicknessMm: number;
  readonly sheetWidthMm: number;
  readonly sheetHeightMm: number;
  /** k: neutral fraction counted from the inside of the bend. */
  readonly neutralFraction: number;
  readonly densityKgM3: number;
  readonly stretchLimits: StretchLimits;
  /** Left out where `BEND_LIMITS` hold. */
  readonly bendLimits?: BendLimits;
  /** Shop rules that differ from the usual ones (`FOAM_RULES`); left out where none does. */
  readonly rules?: Partial<FoamRules>;
  /** Known when the maker has measured it. */
  readonly shrinkage?: HeatShrinkage;
  /** What was measured to find `neutralFraction`, kept so that it can be gone on with. */
  readonly neutralTest?: NeutralTest;
}

/** Per cent of stretch or squash from which the program speaks up. */
export interface StretchLimits {
  readonly noticePct: number;
  readonly tooMuchPct: number;
}

/** Paper in mm, upright (width < height for named papers); a roll has the roll's width and a height chosen by what lies on it. */
export interface Paper {
  readonly name: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly roll: boolean;
}
