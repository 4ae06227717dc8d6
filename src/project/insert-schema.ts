import * as v from 'valibot';
import { INSERT_KINDS } from '../model/insert.ts';

/** Longest that makes sense, mm; corners of an outline and places of a way for wires at most. */
const MOST_MM = 1e5;
const MOST_POINTS = 2000;

const finite = v.pipe(v.number(), v.finite());
const lengthMm = v.pipe(finite, v.gtValue(0), v.maxValue(MOST_MM));
const fromZeroMm = v.pipe(finite, v.minValue(0), v.maxValue(MOST_MM));
const points = v.pipe(v.array(v.tuple([finite, finite])), v.maxLength(MOST_POINTS));

const form = v.variant('shape', [
  v.object({ shape: v.literal('round'), diameterMm: lengthMm }),
  v.object({
    shape: v.literal('rectangle'),
    lengthMm,
    widthMm: lengthMm,
    cornerMm: v.optional(fromZeroMm),
  }),
  v.object({ shape: v.literal('outline'), points: v.pipe(points, v.minLength(3)) }),
]);

const wish = v.object({
  kind: v.picklist(INSERT_KINDS),
  size: v.optional(v.pipe(v.string(), v.maxLength(200))),
  form: v.optional(form),
  lengthMm: v.optional(lengthMm),
  depthMm: v.optional(lengthMm),
  count: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1))),
  side: v.optional(v.picklist(['back', 'face'])),
  clearanceMm: v.optional(fromZeroMm),
  coverMm: v.optional(fromZeroMm),
  opening: v.optional(form),
  wayIn: v.optional(v.picklist(['lid', 'flush-lid', 'open', 'closed'])),
  lapMm: v.optional(fromZeroMm),
  channel: v.optional(v.object({ widthMm: lengthMm, depthMm: lengthMm, path: v.pipe(points, v.minLength(2)) })),
  hasPlate: v.optional(v.boolean()),
  hasFrames: v.optional(v.boolean()),
  pole: v.optional(v.picklist(['north', 'south'])),
  pair: v.optional(v.pipe(v.string(), v.minLength(1), v.maxLength(200))),
});

/** What tells something that is let in from other parts. */
export const insertFields = {
  kind: v.literal('insert'),
  wish,
  into: v.pipe(v.string(), v.minLength(1)),
  at: v.optional(v.object({ piece: v.pipe(v.string(), v.minLength(1)), x: finite, y: finite, turnDeg: finite })),
};
