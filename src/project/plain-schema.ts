import * as v from 'valibot';
import { artworkFields } from './artwork-schema.ts';
import { buildUpFields } from './build-up-schema.ts';
import { engravingFields } from './engraving-schema.ts';
import { insertFields } from './insert-schema.ts';
import { MOST_PARTS } from './part-limits.ts';
import { finite, wholeWithin } from './plain-limits.ts';
import { stackFields } from './stack-schema.ts';
import { coversFields, strapFields, trimFields } from './trim-schema.ts';
import { firstById } from './first-by.ts';

/** Longest word of a size as it was typed. */
const MOST_TYPED = 200;
/** Sizes of a shape at most. */
const MOST_SIZES = 64;

const base = {
  id: v.pipe(v.string(), v.minLength(1)),
  name: v.string(),
  transform: v.pipe(v.array(finite), v.length(16)),
  copies: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(1000)),
  mirrored: v.optional(v.object({ count: wholeWithin(1, 1000), ownHand: v.picklist(['left', 'right']) })),
  foams: v.pipe(v.array(v.string()), v.minLength(1)),
};

const shape = v.object({
  kind: v.literal('shape'),
  ...base,
  shape: v.string(),
  sizes: v.pipe(
    v.record(v.string(), v.pipe(v.string(), v.maxLength(MOST_TYPED))),
    v.check((sizes) => Object.keys(sizes).length <= MOST_SIZES, `at most ${MOST_SIZES} sizes`),
  ),
});

const artwork = v.object({ ...base, ...artworkFields });
const buildUp = v.object({ ...base, ...buildUpFields });
const stack = v.pipe(
  v.object({ ...base, ...stackFields }),
  v.check(
    ({ source, turned }) => (source === undefined) !== (turned === undefined),
    'a stack of either a source or a turned profile',
  ),
);
const trim = v.object({ ...base, ...trimFields });
const covers = v.object({ ...base, ...coversFields });
const strap = v.object({ ...base, ...strapFields });
const engraving = v.object({ ...base, ...engravingFields });
const insert = v.object({ ...base, ...insertFields });

/** Parts that no sculpt is parted for. */
export const plainSchema = v.pipe(
  v.array(v.variant('kind', [shape, stack, artwork, buildUp, trim, covers, strap, engraving, insert])),
  v.maxLength(MOST_PARTS),
  v.checkItems((one, index, all) => firstById(one, index, all), 'a part with an id of its own'),
  v.checkItems(
    ({ copies, mirrored }) => mirrored === undefined || mirrored.count <= copies,
    'a part with no more mirror images than copies',
  ),
);
