import * as v from 'valibot';
import { MOST_JOINS } from './part-limits.ts';
import { firstById } from './first-by.ts';

/** Longest that makes sense, mm. */
const MOST_MM = 1e5;

const finite = v.pipe(v.number(), v.finite());
const lengthMm = v.pipe(finite, v.gtValue(0), v.maxValue(MOST_MM));
const fromZeroMm = v.pipe(finite, v.minValue(0), v.maxValue(MOST_MM));
const part = v.pipe(v.string(), v.minLength(1));
const direction = v.pipe(
  v.tuple([finite, finite, finite]),
  v.check(([x, y, z]) => Math.hypot(x, y, z) > 1e-9, 'a direction that is not 0'),
);
const id = v.pipe(v.string(), v.minLength(1));

const joint = v.variant('kind', [
  v.object({
    kind: v.literal('peg'),
    diameterMm: lengthMm,
    engagementMm: v.optional(lengthMm),
    isLoose: v.optional(v.boolean()),
  }),
  v.object({
    kind: v.literal('magnets'),
    pullN: v.pipe(finite, v.gtValue(0)),
    acrossMm: lengthMm,
    safety: v.optional(v.pipe(finite, v.gtValue(0), v.maxValue(100))),
  }),
  v.object({ kind: v.literal('strap'), count: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1))) }),
]);

const hole = {
  kind: v.literal('hole'),
  part,
  through: part,
  roomMm: v.optional(fromZeroMm),
  along: v.optional(direction),
};
const seat = {
  kind: v.literal('seat'),
  part,
  on: part,
  side: v.optional(v.picklist(['face', 'back'])),
  along: v.optional(direction),
};
const travel = {
  kind: v.literal('travel'),
  parts: v.optional(v.pipe(v.array(part), v.minLength(1))),
  along: direction,
  bagMm: lengthMm,
  whole: v.optional(v.pipe(v.array(v.object({ name: v.string(), fromMm: finite, toMm: finite })), v.maxLength(200))),
  joint,
  massKg: v.optional(v.pipe(finite, v.gtValue(0))),
  gripMm: v.optional(fromZeroMm),
};

const join = v.variant('kind', [v.object({ ...hole, id }), v.object({ ...seat, id }), v.object({ ...travel, id })]);

/** Joins as a parts file tells of them: parts by their names. */
export const listedJoinsSchema = v.pipe(
  v.array(v.variant('kind', [v.strictObject(hole), v.strictObject(seat), v.strictObject(travel)])),
  v.maxLength(MOST_JOINS),
);

/** How parts have to do with each other. */
export const joinsSchema = v.pipe(
  v.array(join),
  v.maxLength(MOST_JOINS),
  v.checkItems((one, index, all) => firstById(one, index, all), 'a join with an id of its own'),
);
