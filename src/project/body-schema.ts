import * as v from 'valibot';
import { BODY_MEASURES, MOST_EASE_MM, MOST_MEASURE_MM, MOST_SHARE } from '../model/body-measures.ts';

const measure = v.picklist(BODY_MEASURES.map(({ name }) => name));

/** The table of the body: each measure once. */
export const bodySchema = v.pipe(
  v.array(v.object({ name: measure, mm: v.pipe(v.number(), v.gtValue(0), v.maxValue(MOST_MEASURE_MM)) })),
  v.check((list) => new Set(list.map(({ name }) => name)).size === list.length, 'each measure once'),
);

/** A size that follows it. */
export const bodyScaleSchema = v.object({
  by: v.literal('body'),
  measure,
  easeMm: v.pipe(v.number(), v.minValue(-MOST_EASE_MM), v.maxValue(MOST_EASE_MM)),
  at: v.variant('by', [
    v.object({ by: v.literal('tape'), tape: v.string() }),
    v.object({
      by: v.literal('extent'),
      axis: v.picklist(['longest', 'x', 'y', 'z']),
      share: v.pipe(v.number(), v.gtValue(0), v.maxValue(MOST_SHARE)),
    }),
  ]),
});
