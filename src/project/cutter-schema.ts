import * as v from 'valibot';
import { CUTTER_LIMITS } from './cutter-commands.ts';

const finite = v.pipe(v.number(), v.finite());

/** What was said of the machine that cuts the sheets (`CutterWish`). */
export const cutterSchema = v.object({
  kind: v.optional(v.picklist(['blade', 'laser'])),
  cutWidthMm: v.optional(
    v.pipe(finite, v.minValue(CUTTER_LIMITS.cutWidthMm.least), v.maxValue(CUTTER_LIMITS.cutWidthMm.most)),
  ),
  bridges: v.optional(
    v.object({
      count: v.pipe(
        v.number(),
        v.integer(),
        v.minValue(CUTTER_LIMITS.bridges.least),
        v.maxValue(CUTTER_LIMITS.bridges.most),
      ),
      widthMm: v.pipe(finite, v.gtValue(0), v.maxValue(CUTTER_LIMITS.bridgeMm.most)),
    }),
  ),
});
