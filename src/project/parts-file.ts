import * as v from 'valibot';
import { readJson } from '../base/read-json.ts';
import { fail, ok, type Result } from '../base/result.ts';
import type { Placing } from '../model/placing.ts';
import { brokenPlace } from './broken-place.ts';
import { firstByName } from './first-by.ts';
import type { ListedInsert } from './insert-part.ts';
import { listedInsertsSchema } from './insert-schema.ts';
import type { ListedJoin } from './joins-listed.ts';
import { listedJoinsSchema } from './joins-schema.ts';
import { MOST_PARTS } from './part-limits.ts';
import { finite, wholeWithin } from './plain-limits.ts';

/** Kinds of parts that a parts file may hold. */
export const LISTED_KINDS = [
  ...(['sculpt', 'shape', 'stack', 'artwork', 'build-up', 'trim', 'covers', 'strap'] as const),
  'engraving',
] as const;

/** A figure as it is written: text, a number of mm or so many, yes or no, or a row of them. */
export type ListedFigure = string | number | boolean | readonly (string | number)[];

/** A part as a parts file tells of it. */
export interface ListedPart {
  readonly kind: (typeof LISTED_KINDS)[number];
  readonly name: string;
  /** How many there are of each that stands by `place`; left out: one. */
  readonly copies?: number;
  /** What it is cut from, by thickness (`10 mm`) or by name, the usual one first; left out: the foam new parts begin with. */
  readonly foam?: readonly string[];
  readonly place?: Partial<Placing>;
  /** Its file, as written: beside the parts file unless it has a folder. */
  readonly file?: string;
  /** Of a shape: its kind, and its sizes. */
  readonly shape?: string;
  readonly sizes?: Readonly<Record<string, string>>;
  /** Figures of its kind, by the names that the kind's own command gives its options. */
  readonly figures: Readonly<Record<string, ListedFigure>>;
}

/** What a parts file tells. */
export interface PartsFile {
  /** Of the prop, where it is made of this file alone. */
  readonly name?: string;
  /** In the order of the file. */
  readonly parts: readonly ListedPart[];
  /** What is let into them and is no foam; left out: nothing. */
  readonly inserts?: readonly ListedInsert[];
  /** How they have to do with each other and with what is there; left out: nothing is said. */
  readonly joins?: readonly ListedJoin[];
}

const MOST_TEXT = 10_000;

const text = v.pipe(v.string(), v.minLength(1), v.maxLength(MOST_TEXT));
const triple = v.strictTuple([finite, finite, finite]);
const count = wholeWithin(1, 1000);

const rule = v.variant('kind', [
  v.strictObject({ kind: v.literal('once') }),
  v.strictObject({ kind: v.literal('line'), count, stepMm: triple }),
  v.strictObject({
    kind: v.literal('round'),
    count,
    point: triple,
    axis: triple,
    stepDeg: v.optional(finite),
  }),
  v.strictObject({ kind: v.literal('mirror'), point: triple, normal: triple }),
]);

const part = v.objectWithRest(
  {
    kind: v.picklist(LISTED_KINDS),
    name: v.pipe(v.string(), v.minLength(1), v.maxLength(200)),
    copies: v.optional(count),
    foam: v.optional(v.union([text, v.pipe(v.array(text), v.minLength(1), v.maxLength(50))])),
    place: v.optional(
      v.strictObject({
        at: v.optional(triple),
        facing: v.optional(triple),
        turnDeg: v.optional(finite),
        copies: v.optional(v.pipe(v.array(rule), v.maxLength(20))),
        ownHand: v.optional(v.picklist(['left', 'right'])),
      }),
    ),
    file: v.optional(text),
    shape: v.optional(text),
    sizes: v.optional(v.record(v.string(), v.union([text, finite]))),
  },
  v.union([text, finite, v.boolean(), v.pipe(v.array(v.union([text, finite])), v.maxLength(1000))]),
);

const schema = v.strictObject({
  version: v.literal(1),
  name: v.optional(v.pipe(v.string(), v.minLength(1), v.maxLength(200))),
  parts: v.pipe(
    v.array(part),
    v.minLength(1),
    v.maxLength(MOST_PARTS),
    v.checkItems((one, index, all) => firstByName(one, index, all), 'a part with a name of its own'),
  ),
  inserts: v.optional(listedInsertsSchema),
  joins: v.optional(listedJoinsSchema),
});

/** Reads a parts file (shared/parts.schema.json). Fails with `parts/not-json` or `parts/broken`. */
export function readPartsFile(content: string, fileName: string): Result<PartsFile> {
  const raw = readJson(content, fileName, () =>
    fail(
      'parts/not-json',
      `${fileName} is not valid JSON: a parts file looks like {"version":1,"parts":[{"kind":"shape","name":"Ring","foam":"10 mm","shape":"torus_skin","sizes":{}}]}.`,
    ),
  );
  if (!raw.ok) return raw;
  const parsed = v.safeParse(schema, raw.value, { abortEarly: true });
  if (!parsed.success)
    return fail('parts/broken', `${fileName} is not a parts file: ${brokenPlace(parsed.issues[0])}.`);
  const { name: propName, inserts, joins } = parsed.output;
  return ok({
    ...(propName === undefined ? {} : { name: propName }),
    ...(inserts === undefined ? {} : { inserts: inserts }),
    ...(joins === undefined ? {} : { joins: joins }),
    parts: parsed.output.parts.map(({ kind, name, copies, foam, place, file, shape, sizes, ...figures }) => ({
      kind,
      name,
      ...(copies === undefined ? {} : { copies }),
      ...(foam === undefined ? {} : { foam: [foam].flat() }),
      ...(place === undefined ? {} : { place: place }),
      ...(file === undefined ? {} : { file }),
      ...(shape === undefined ? {} : { shape }),
      ...(sizes === undefined
        ? {}
        : { sizes: Object.fromEntries(Object.entries(sizes).map(([size, value]) => [size, String(value)])) }),
      figures: figures,
    })),
  });
}
