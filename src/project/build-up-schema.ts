import * as v from 'valibot';
import { finite, fromZeroMm, lengthMm, placeMm, share, wholeWithin, within } from './plain-limits.ts';

/** Corners of a profile, and places, sets of staves and windings of one core at most. */
const MOST_LISTED = 1000;

const listed = <T extends v.GenericSchema>(thing: T) => v.pipe(v.array(thing), v.maxLength(MOST_LISTED));
const weight = within(0, 1e6);

const cap = v.variant('kind', [
  v.object({
    kind: v.literal('discs'),
    sheetMm: lengthMm,
    count: wholeWithin(1, MOST_LISTED),
    diameterMm: v.optional(lengthMm),
  }),
  v.object({ kind: v.literal('bought'), standsOffMm: fromZeroMm }),
]);

const core = v.object({
  pipe: v.optional(v.string()),
  diameterMm: lengthMm,
  material: v.optional(v.string()),
  overallMm: lengthMm,
  startCap: v.optional(cap),
  endCap: v.optional(cap),
  glueRoomMm: fromZeroMm,
  places: listed(v.object({ name: v.string(), fromMm: placeMm, toMm: placeMm, on: v.picklist(['core', 'foam']) })),
});

const winding = v.object({
  fromMm: placeMm,
  toMm: placeMm,
  widthMm: lengthMm,
  thicknessMm: fromZeroMm,
  neutralFraction: share,
  by: v.union([v.object({ pitchMm: lengthMm }), v.object({ overlapMm: placeMm })]),
  keep: v.picklist(['pitch', 'overlap', 'straight']),
  starts: wholeWithin(1, 12),
  hand: v.picklist(['right', 'left']),
  cut: v.picklist(['straight', 'curved']),
  crossed: v.boolean(),
});

/** A core with what is built up on it, beside what all parts have. */
export const buildUpFields = {
  kind: v.literal('build-up'),
  wish: v.object({
    core,
    profile: listed(
      v.object({ atMm: placeMm, radiusMm: fromZeroMm, onward: v.optional(v.picklist(['straight', 'smooth'])) }),
    ),
    rule: v.picklist(['sand', 'middle', 'fill']),
    weights: v.object({ sandCm3: weight, fillCm3: weight, wrap: weight }),
    seamTurnDeg: finite,
    skin: v.optional(v.object({ sheetMm: lengthMm, deviationMm: lengthMm })),
    staves: listed(v.object({ fromMm: placeMm, toMm: placeMm, count: wholeWithin(3, 60), sheetMm: lengthMm })),
    windings: listed(winding),
  }),
  wraps: v.optional(v.array(v.string())),
};
