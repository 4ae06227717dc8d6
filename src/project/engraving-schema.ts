import * as v from 'valibot';
import { drawingOfFile } from './artwork-schema.ts';
import { finite, placeMm, plainSource } from './plain-limits.ts';
import { pointOfSculpt } from './trim-schema.ts';

/** What tells an engraving from other parts. */
export const engravingFields = {
  kind: v.literal('engraving'),
  on: v.pipe(v.string(), v.minLength(1)),
  source: plainSource,
  drawing: drawingOfFile,
  at: v.variant('by', [
    v.object({ by: v.literal('point'), point: pointOfSculpt }),
    v.object({ by: v.literal('nearest'), mm: v.tuple([placeMm, placeMm, placeMm]) }),
  ]),
  up: v.optional(
    v.pipe(
      v.tuple([finite, finite, finite]),
      v.check((up) => up.some((x) => x !== 0), 'a direction other than 0 0 0'),
    ),
  ),
  trueOn: v.picklist(['surface', 'piece']),
};
