import * as v from 'valibot';
import { finite, flatPoint, fromZeroMm, lengthMm, plainSource, wholeWithin, within } from './plain-limits.ts';

/** Corners of a turned profile at most. */
const MOST_CORNERS = 1000;

const fileNumber = wholeWithin(0, Number.MAX_SAFE_INTEGER);
const hole = { diameterMm: lengthMm, clearanceMm: within(0, 50), marginMm: within(0, 200) };

/** A solid in layers, beside what all parts have. */
export const stackFields = {
  kind: v.literal('stack'),
  source: v.optional(plainSource),
  turned: v.optional(
    v.pipe(
      v.array(v.object({ lengthMm: fromZeroMm, radiusMm: fromZeroMm })),
      v.minLength(2),
      v.maxLength(MOST_CORNERS),
    ),
  ),
  scale: v.optional(
    v.variant('by', [
      v.object({ by: v.literal('unit'), unit: v.picklist(['mm', 'cm', 'm', 'in']) }),
      v.object({ by: v.literal('size'), axis: v.picklist(['longest', 'x', 'y', 'z']), mm: lengthMm }),
      v.object({ by: v.literal('points'), from: fileNumber, to: fileNumber, mm: lengthMm }),
    ]),
  ),
  wish: v.object({
    axis: v.pipe(
      v.object({ x: finite, y: finite, z: finite }),
      v.check(({ x, y, z }) => x !== 0 || y !== 0 || z !== 0, 'a direction that is not 0'),
    ),
    rule: v.picklist(['larger', 'middle', 'smaller']),
    seat: v.picklist(['bottom', 'middle', 'top']),
    dowels: v.optional(v.object(hole)),
    core: v.optional(v.object({ ...hole, at: v.optional(flatPoint) })),
    wallMm: v.optional(lengthMm),
    openAt: v.optional(v.picklist(['bottom', 'top', 'both'])),
  }),
};
