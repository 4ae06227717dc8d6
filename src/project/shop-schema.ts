import * as v from 'valibot';
import { COATING_USES } from '../model/coatings.ts';
import { claySchema, coloursSchema } from './finish-schema.ts';

const finite = v.pipe(v.number(), v.finite());
const positive = v.pipe(finite, v.gtValue(0));
const notNegative = v.pipe(finite, v.minValue(0));
const named = v.pipe(v.string(), v.minLength(1));

const glue = v.pipe(
  v.object({
    id: v.string(),
    name: named,
    waitMin: notNegative,
    openMin: positive,
    brushMmPerMin: positive,
    joinMmPerMin: positive,
    alignMinPerSeam: notNegative,
    cureH: notNegative,
    coverageM2PerL: positive,
    cautions: v.array(v.string()),
  }),
  v.check(
    ({ waitMin, openMin, alignMinPerSeam }) => openMin > waitMin + alignMinPerSeam,
    'a glue that stays open for longer than it takes to dry and to be put together',
  ),
);

const coating = v.pipe(
  v.object({
    id: v.string(),
    name: named,
    use: v.picklist(COATING_USES),
    coverageM2PerL: v.optional(positive),
    solidsPct: v.optional(v.pipe(positive, v.maxValue(100))),
    dryFilmUm: v.optional(positive),
    coats: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(50)),
    recoatMin: notNegative,
    cureH: notNegative,
    cautions: v.array(v.string()),
  }),
  v.check(
    ({ coverageM2PerL, solidsPct, dryFilmUm }) =>
      coverageM2PerL !== undefined || (solidsPct !== undefined && dryFilmUm !== undefined),
    'either coverageM2PerL or both solidsPct and dryFilmUm',
  ),
);

/** What the maker said of the work at the bench (`ShopChoices`). */
export const shopSchema = v.object({
  glue: v.optional(glue),
  coatings: v.optional(v.array(coating)),
  colours: v.optional(coloursSchema),
  baseColour: v.optional(v.string()),
  clay: v.optional(claySchema),
  currency: v.optional(named),
  sheetPrices: v.optional(v.array(v.object({ foam: v.string(), price: notNegative }))),
  gluePricePerL: v.optional(notNegative),
});

/** An order of gluing that was accepted. */
export const gluingSchema = v.array(
  v.object({
    pieces: v.strictTuple([v.string(), v.string()]),
    nth: v.pipe(v.number(), v.integer(), v.minValue(0)),
  }),
);
