import * as v from 'valibot';
import { STEEP_WAYS } from './seam-commands.ts';

const count = v.pipe(v.number(), v.integer(), v.minValue(0));
const finite = v.pipe(v.number(), v.finite());

/** A place on the sculpt (`SurfacePoint`), as project files and seam files write it. */
const surfacePoint = v.union([v.object({ vertex: count }), v.object({ face: count, bary: v.array(finite) })]);

const side = v.picklist(['left', 'right']);

/** A line across faces (`SeamPath`), as project files and seam files write it; in the latter `kind` may be left out. */
export const seamPathSchema = v.object({
  points: v.pipe(v.array(surfacePoint), v.minLength(2)),
  kind: v.optional(v.picklist(['butt', 'lap', 'rebate']), 'butt'),
  allowanceMm: v.optional(v.pipe(finite, v.minValue(0))),
  lapSide: v.optional(side),
  lapUnder: v.optional(v.boolean()),
  standSide: v.optional(side),
  steep: v.optional(v.picklist(STEEP_WAYS)),
  holdLength: v.optional(v.boolean()),
  straight: v.optional(v.boolean()),
  locked: v.optional(v.boolean()),
});
