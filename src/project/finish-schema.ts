import * as v from 'valibot';
import { MOST_CLAY_MM } from '../model/clay.ts';
import { MOST_COLOURS } from '../model/colours.ts';
import type { Project } from './project.ts';
import { firstBy, firstById } from './first-by.ts';

const finite = v.pipe(v.number(), v.finite());
const positive = v.pipe(finite, v.gtValue(0));
const notNegative = v.pipe(finite, v.minValue(0));
const named = v.pipe(v.string(), v.minLength(1));
const clayMm = v.pipe(positive, v.maxValue(MOST_CLAY_MM));

const colour = v.object({
  id: named,
  name: named,
  rgb: v.pipe(v.string(), v.regex(/^#[0-9a-f]{6}$/)),
  coats: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(50)),
  coverageM2PerL: positive,
  figures: v.picklist(['label', 'usual']),
  recoatMin: notNegative,
  handleMin: notNegative,
  cautions: v.array(v.string()),
});

const plainName = (name: string): string => name.trim().toLowerCase();
const firstByPlainName = firstBy(({ name }: { readonly name: string }) => plainName(name));

/** Paints of the maker's own list (`ShopChoices.colours`). */
export const coloursSchema = v.pipe(
  v.array(colour),
  v.maxLength(MOST_COLOURS),
  v.checkItems(
    (one, index, list) => firstById(one, index, list) && firstByPlainName(one, index, list),
    'a colour with an id and a name of its own',
  ),
);

/** Names that people would take for one. */
export const isSameName = (a: string, b: string): boolean => plainName(a) === plainName(b);

/** What fillets and shapes are modelled in (`ShopChoices.clay`). */
export const claySchema = v.object({
  id: v.string(),
  name: named,
  layerMm: positive,
  dryH: notNegative,
  shrinkPct: v.pipe(notNegative, v.ltValue(50)),
  cautions: v.array(v.string()),
});

/** `Region.clay`. */
export const clayShapeSchema = v.object({ heightMm: clayMm });

/** `SculptPart.fillets`. */
export const filletsSchema = v.array(
  v.object({
    pieces: v.strictTuple([v.string(), v.string()]),
    nth: v.pipe(v.number(), v.integer(), v.minValue(0)),
    radiusMm: clayMm,
  }),
);

/** A colour that is painted with but not in the list; null where all are. */
export function unknownColour({ shop, parts }: Pick<Project, 'shop' | 'parts'>): string | null {
  const known = new Set(shop?.colours?.map(({ id }) => id));
  const used = [shop?.baseColour, ...parts.flatMap(({ regions }) => regions.map(({ colour: own }) => own))];
  return used.find((id) => id !== undefined && !known.has(id)) ?? null;
}
