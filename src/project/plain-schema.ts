import * as v from 'valibot';

/** Longest word of a size as it was typed. */
const MOST_TYPED = 200;
/** Sizes of a shape at most, and parts of a project. */
const MOST_SIZES = 64;
const MOST_PARTS = 500;

const finite = v.pipe(v.number(), v.finite());

const base = {
  id: v.pipe(v.string(), v.minLength(1)),
  name: v.string(),
  transform: v.pipe(v.array(finite), v.length(16)),
  copies: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(1000)),
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

/** Parts that no sculpt is parted for. */
export const plainSchema = v.pipe(
  v.array(v.variant('kind', [shape])),
  v.maxLength(MOST_PARTS),
  v.checkItems(
    ({ id }, index, list) => list.findIndex((other) => other.id === id) === index,
    'a part with an id of its own',
  ),
);
