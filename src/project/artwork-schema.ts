import * as v from 'valibot';
import { flatPoint, fromZeroMm, lengthMm, placeMm, plainSource, within, wholeWithin } from './plain-limits.ts';

/** Copies of artwork at most, sheets of a badge, places of a photograph and lengths it is held against. */
const MOST_COPIES = 2000;
const MOST_SHEETS = 99;
const MOST_PLACES = 1000;

const fine = within(0.0001, 100);
const some = within(0, 100);
const known = { a: flatPoint, b: flatPoint, mm: lengthMm };

const drawing = v.object({
  size: v.variant('by', [
    v.object({ by: v.literal('file') }),
    v.object({ by: v.literal('width'), mm: lengthMm }),
    v.object({ by: v.literal('points'), ...known }),
    v.object({ by: v.literal('names'), a: v.string(), b: v.string(), mm: lengthMm }),
  ]),
  deviationMm: fine,
  closeMm: some,
  regulariseMm: some,
  symmetricMm: v.optional(some),
  strokes: v.picklist(['centre', 'outline']),
});

const picture = v.object({
  size: v.variant('by', [
    v.object({ by: v.literal('file') }),
    v.object({ by: v.literal('dpi'), dpi: within(1, 20_000) }),
    v.object({ by: v.picklist(['width', 'height']), mm: lengthMm }),
    v.object({ by: v.literal('points'), ...known }),
    v.object({
      by: v.literal('photo'),
      places: v.pipe(
        v.array(v.object({ px: flatPoint, mm: v.object({ x: placeMm, y: placeMm }) })),
        v.maxLength(MOST_PLACES),
      ),
    }),
  ]),
  thresholdPct: v.nullable(within(0, 100)),
  isInverted: v.boolean(),
  smoothPx: within(0, 50),
  specksMm2: within(0, 1e6),
  traceMm: v.nullable(within(0.001, 100)),
  crop: v.nullable(v.pipe(v.array(flatPoint), v.minLength(2), v.maxLength(MOST_PLACES))),
  light: v.nullable(v.picklist(['drawn', 'photo'])),
  checks: v.pipe(v.array(v.object(known)), v.maxLength(MOST_PLACES)),
  deviationMm: fine,
  regulariseMm: some,
  symmetricMm: v.optional(some),
});

const corners = v.picklist(['round', 'sharp']);
const repeat = v.union([v.object({ count: wholeWithin(1, MOST_COPIES) }), v.object({ spacingMm: lengthMm })]);

const craft = v.variant('kind', [
  v.object({
    kind: v.literal('cut'),
    quantity: v.optional(wholeWithin(1, MOST_COPIES)),
    isMirroredToo: v.optional(v.boolean()),
  }),
  v.object({ kind: v.literal('offset'), distanceMm: placeMm, corners }),
  v.object({
    kind: v.literal('inlay'),
    clearanceMm: fromZeroMm,
    from: v.picklist(['pocket', 'insert', 'both']),
    kerfMm: fromZeroMm,
    corners,
  }),
  v.object({
    kind: v.literal('raised'),
    layers: wholeWithin(1, MOST_SHEETS),
    edge: v.variant('kind', [
      v.object({ kind: v.literal('square') }),
      v.object({ kind: v.literal('bevel'), leanDeg: within(0, 80) }),
      v.object({ kind: v.literal('rounded'), widthMm: lengthMm }),
    ]),
    rule: v.picklist(['edge', 'middle']),
  }),
  v.object({
    kind: v.literal('round'),
    repeat,
    spacedOn: v.picklist(['outside', 'flat', 'inside']),
    barrelMm: lengthMm,
    stripMm: v.optional(lengthMm),
    as: v.picklist(['engrave', 'placement']),
  }),
  v.object({
    kind: v.literal('along'),
    repeat,
    startMm: fromZeroMm,
    endMm: fromZeroMm,
    ends: v.picklist(['both', 'first', 'none']),
    stand: v.picklist(['along', 'upright']),
  }),
  v.object({
    kind: v.literal('scatter'),
    leastMm: fromZeroMm,
    edgeMm: fromZeroMm,
    sizeShare: within(0, 0.9),
    turnRad: within(0, Math.PI),
    seed: within(0, 2 ** 31),
  }),
]);

/** How a file is read as artwork. */
export const drawingOfFile = v.variant('from', [
  v.object({ from: v.literal('svg'), choice: drawing }),
  v.object({ from: v.literal('picture'), choice: picture }),
]);

/** Flat artwork, beside what all parts have. */
export const artworkFields = {
  kind: v.literal('artwork'),
  source: plainSource,
  other: v.optional(plainSource),
  drawing: drawingOfFile,
  craft,
};
