import * as v from 'valibot';
import { finite, lengthMm } from './plain-limits.ts';

const positive = v.pipe(finite, v.gtValue(0));

/** `Region.clayCore`. */
export const clayCoreSchema = v.object({
  coverMm: lengthMm,
  foams: v.pipe(v.array(v.string()), v.minLength(1), v.maxLength(32)),
  axis: v.optional(
    v.pipe(
      v.object({ x: finite, y: finite, z: finite }),
      v.check(({ x, y, z }) => Math.hypot(x, y, z) > 0, 'an axis of some length'),
    ),
  ),
  wallMm: v.optional(lengthMm),
  label: v.optional(
    v.object({ gPerCm3: v.optional(positive), packMl: v.optional(positive), packG: v.optional(positive) }),
  ),
});
