import * as v from 'valibot';
import { STEEP_WAYS } from './seam-commands.ts';

const count = v.pipe(v.number(), v.integer(), v.minValue(0));

/** How one seam is joined (`SeamSetting`), as project files and seam files write it. */
export const seamSettingSchema = v.object({
  edge: v.strictTuple([count, count]),
  kind: v.picklist(['butt', 'lap', 'rebate']),
  allowanceMm: v.pipe(v.number(), v.finite(), v.minValue(0)),
  lapFace: v.optional(count),
  lapUnder: v.optional(v.boolean()),
  standFace: v.optional(count),
  steep: v.optional(v.picklist(STEEP_WAYS)),
});
