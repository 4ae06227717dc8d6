import * as v from 'valibot';
import { finite, fromZeroMm, lengthMm, share } from './plain-limits.ts';

/** Points of a drawn line, seams of a strip and seams left without a cover at most. */
const MOST_POINTS = 10_000;

const fileNumber = v.pipe(v.number(), v.integer(), v.minValue(0));
/** A path across faces is named by numbers under 0 (`path-names.ts`). */
const edge = v.tuple([v.pipe(v.number(), v.integer()), v.pipe(v.number(), v.integer())]);
const edges = v.pipe(v.array(edge), v.maxLength(MOST_POINTS));

/** A point of a sculpt in file numbers. */
export const pointOfSculpt = v.union([
  v.object({ vertex: fileNumber }),
  v.object({ face: fileNumber, bary: v.array(v.pipe(finite, v.minValue(0))) }),
]);

const along = v.variant('by', [
  v.object({
    by: v.literal('seams'),
    ids: v.pipe(v.array(v.string()), v.minLength(1), v.maxLength(MOST_POINTS)),
  }),
  v.object({ by: v.literal('edges'), edges: v.pipe(edges, v.minLength(1)) }),
  v.object({
    by: v.literal('line'),
    points: v.pipe(v.array(pointOfSculpt), v.minLength(2), v.maxLength(MOST_POINTS)),
    closed: v.boolean(),
  }),
]);

const profile = v.variant('kind', [
  v.object({ kind: v.literal('flat') }),
  v.object({
    kind: v.literal('bevelled'),
    leanDeg: v.pipe(finite, v.gtValue(0), v.ltValue(80)),
    sides: v.picklist(['both', 'left', 'right']),
  }),
  v.object({ kind: v.literal('half-round'), from: v.picklist(['bought', 'cut']) }),
  v.object({
    kind: v.literal('quarter-round'),
    from: v.picklist(['bought', 'cut']),
    square: v.picklist(['left', 'right']),
  }),
  v.object({ kind: v.literal('edge-roll'), rimMm: lengthMm, radiusMm: lengthMm, lapMm: fromZeroMm }),
  v.object({ kind: v.literal('u-binding'), rimMm: lengthMm, depthMm: lengthMm, insideRadiusMm: fromZeroMm }),
]);

const end = v.variant('kind', [
  v.object({ kind: v.literal('square') }),
  v.object({ kind: v.literal('mitre'), turnDeg: v.pipe(finite, v.gtValue(-150), v.ltValue(150)) }),
  v.object({ kind: v.literal('pointed'), lengthMm }),
]);

const strip = v.object({
  widthMm: lengthMm,
  leftShare: share,
  profile,
  start: end,
  end,
  overlapMm: fromZeroMm,
  mostLengthMm: v.optional(lengthMm),
  withinMm: lengthMm,
  hasMarks: v.boolean(),
});

const on = v.pipe(v.string(), v.minLength(1));

/** What tells a strip on a sculpt from other parts. */
export const trimFields = { kind: v.literal('trim'), on, along, strip };

/** The same of covers over all its seams. */
export const coversFields = {
  kind: v.literal('covers'),
  on,
  strip,
  mostTurnDeg: v.pipe(finite, v.minValue(0), v.maxValue(150)),
  without: v.optional(edges),
};

/** The same of a strap. */
export const strapFields = {
  kind: v.literal('strap'),
  strap: v.object({
    girthMm: lengthMm,
    widthMm: lengthMm,
    overlapMm: lengthMm,
    holes: v.object({
      count: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(100)),
      spacingMm: lengthMm,
      diameterMm: lengthMm,
    }),
    tip: v.variant('kind', [
      v.object({ kind: v.literal('pointed'), lengthMm }),
      v.object({ kind: v.literal('rounded') }),
    ]),
    buckle: v.object({ barMm: lengthMm, tabMm: lengthMm, slotWidthMm: fromZeroMm }),
    keeperWidthMm: lengthMm,
    isReinforced: v.boolean(),
  }),
};
