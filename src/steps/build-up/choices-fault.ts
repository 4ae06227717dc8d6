import type { BuildUpWish } from '../../model/build-up.ts';
import { LEAST_SEAM_TURN_DEG } from './seam-angles.ts';

const MOST_STAVE_SETS = 20;
const MOST_WINDINGS = 20;

/** What is out of its range among the choices that no part of the plan looks at itself: one sentence, or null. @param cut length of the core, mm. */
export function choicesFault(wish: BuildUpWish, cut: number): string | null {
  const { seamTurnDeg, weights, staves, windings, skin } = wish;
  if (!(seamTurnDeg >= LEAST_SEAM_TURN_DEG && seamTurnDeg <= 360 - LEAST_SEAM_TURN_DEG))
    return `The seam of a layer turns by ${LEAST_SEAM_TURN_DEG} to ${360 - LEAST_SEAM_TURN_DEG} degrees from that of the one beneath.`;
  for (const [name, value] of Object.entries(weights))
    if (!(value >= 0 && value <= 1e6)) return `The weight ${name} of the plan is from 0 to a million.`;
  if (staves.length > MOST_STAVE_SETS || windings.length > MOST_WINDINGS)
    return `One core takes at most ${MOST_STAVE_SETS} sets of staves and ${MOST_WINDINGS} windings.`;
  if (skin !== undefined) {
    if (staves.length > 0) return 'A core takes a skin or staves, not both: staves are a face of their own.';
    if (wish.profile.length === 0) return 'A skin needs a profile to lie on.';
    if (!(skin.sheetMm >= 0.1 && skin.sheetMm <= 50)) return 'A skin is from 0.1 to 50 mm thick.';
    if (!(skin.deviationMm >= 0.01 && skin.deviationMm <= 20))
      return 'A skin may stand off smooth stretches by 0.01 to 20 mm.';
  }
  for (const one of windings) {
    const { fromMm, toMm, widthMm, thicknessMm, neutralFraction, starts, by } = one;
    if (!(fromMm >= 0 && toMm - fromMm >= 1 && toMm <= cut + 1e-9))
      return `A strip is wound over a stretch of the core, which is cut to ${cut.toFixed(1)} mm: say where it begins and ends.`;
    if (!(widthMm >= 0.5 && widthMm <= 1000)) return 'A strip is from 0.5 to 1000 mm wide.';
    if (!(thicknessMm >= 0 && thicknessMm <= 50)) return 'A strip is up to 50 mm thick.';
    if (!(neutralFraction >= 0 && neutralFraction <= 1)) return 'The neutral fraction of a strip is from 0 to 1.';
    if (!Number.isInteger(starts) || starts < 1 || starts > 12) return 'A winding has 1 to 12 starts.';
    if ('pitchMm' in by && !(by.pitchMm > 0 && by.pitchMm <= 1e4))
      return 'The pitch of a winding is over 0 mm: so far it gets on with each turn.';
    if ('overlapMm' in by && !(by.overlapMm > -1000 && by.overlapMm < widthMm))
      return 'The overlap must be less than the width of the strip, or the winding never gets on.';
  }
  return null;
}
