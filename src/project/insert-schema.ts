import * as v from 'valibot';
import { INSERT_KINDS } from '../model/insert.ts';
import { finite, fromZeroMm, lengthMm, placeMm } from './plain-limits.ts';

/** Corners of an outline and places of a way for wires at most. */
const MOST_POINTS = 2000;
/** Longest name, and inserts of a parts file at most. */
const MOST_NAME = 200;
const MOST_INSERTS = 500;

const points = v.pipe(v.array(v.tuple([placeMm, placeMm])), v.maxLength(MOST_POINTS));

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

const name = v.pipe(v.string(), v.minLength(1), v.maxLength(MOST_NAME));
const triple = v.tuple([finite, finite, finite]);
const at = v.object({ piece: v.pipe(v.string(), v.minLength(1)), x: placeMm, y: placeMm, turnDeg: finite });

/** Inserts as a parts file tells of them: the part it is let into by its name, foams by thickness or name. */
export const listedInsertsSchema = v.pipe(
  v.array(
    v.strictObject({
      name,
      into: name,
      wish,
      at: v.optional(at),
      place: v.optional(v.strictObject({ at: triple, facing: v.optional(triple), turnDeg: v.optional(finite) })),
      foam: v.optional(v.pipe(v.array(name), v.minLength(1), v.maxLength(50))),
      copies: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(1000))),
    }),
  ),
  v.maxLength(MOST_INSERTS),
);

/** What tells something that is let in from other parts. */
export const insertFields = {
  kind: v.literal('insert'),
  wish,
  into: v.pipe(v.string(), v.minLength(1)),
  at: v.optional(at),
};
