import { BEND_LIMITS } from '../model/bend-check.ts';
import { rulesOf } from '../model/foam-settings.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import type { ProposalLimits } from '../pipeline/propose/proposal.ts';
import type { SculptPart } from '../project/project.ts';

/** What pieces of the outermost sheet must keep: stretch and squash, the size of the foam's sheets and its least width. */
export const limitsOf = (part: SculptPart, foam: FoamSheet, limitPct: number): ProposalLimits => ({
  stretchPct: limitPct,
  squashPct: limitPct,
  laying: part.flatten,
  sheet: { widthMm: foam.sheetWidthMm, heightMm: foam.sheetHeightMm },
  leastWidthMm: rulesOf(foam).narrowThicknesses * (part.layers.at(-1)?.thicknessMm ?? foam.thicknessMm),
  bend: {
    thicknessMm: part.layers.at(-1)?.thicknessMm ?? foam.thicknessMm,
    neutralFraction: part.layers.at(-1)?.neutralFraction ?? foam.neutralFraction,
    foldLimitDeg: rulesOf(foam).foldLimitDeg,
    mostPct: (foam.bendLimits ?? BEND_LIMITS).tooMuchPct,
  },
});
