import { GOLDEN_TURN_DEG, USUAL_WEIGHTS, type BuildUpWish, type WindingWish } from '../../../src/model/build-up.ts';

/** 900 mm of 32 mm pipe with three sheets in hand. */
export const wish = (change: Partial<BuildUpWish> = {}): BuildUpWish => ({
  core: { diameterMm: 32, overallMm: 900, glueRoomMm: 0.3, places: [] },
  profile: [],
  sheets: [10, 6, 2].map((thicknessMm) => ({ thicknessMm, neutralFraction: 0.5 })),
  rule: 'sand',
  weights: USUAL_WEIGHTS,
  seamTurnDeg: GOLDEN_TURN_DEG,
  staves: [],
  windings: [],
  ...change,
});

export const winding = (change: Partial<WindingWish> = {}): WindingWish => ({
  fromMm: 0,
  toMm: 600,
  widthMm: 20,
  thicknessMm: 0,
  neutralFraction: 0.5,
  by: { overlapMm: 0 },
  keep: 'overlap',
  starts: 1,
  hand: 'right',
  cut: 'straight',
  crossed: false,
  ...change,
});

/** `[[0, 20], [300, 24]]` as corners. */
export const corners = (pairs: readonly (readonly [number, number])[], onward?: 'smooth') =>
  pairs.map(([atMm, radiusMm]) => ({ atMm, radiusMm, ...(onward === undefined ? {} : { onward }) }));
