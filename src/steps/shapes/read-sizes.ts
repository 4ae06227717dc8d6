import { MM_PER_INCH } from '../../base/format-length.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import type { SizeField } from '../../model/shape-size.ts';
import { readSize, readSizeRow } from './read-size.ts';
import type { ShapeKind } from './shape-kind.ts';
import { Sizes } from './sizes.ts';

/** A size as it was typed: its name and what stands behind it. */
export type TypedSize = readonly [name: string, text: string];

type Value = number | string | readonly number[];

/** How a typed name is meant: the field, the unit its name says, and whether the value is twice the size or half of it. */
interface Meant {
  readonly field: SizeField;
  readonly unit: 'mm' | 'in';
  readonly scale: number;
  readonly sets: Readonly<Record<string, string>>;
}

/**
 * Reads the sizes of a shape. A name may be written with `-` or in one word with capitals; it may leave out `_deg`; it may end in `_mm` or
 * `_in`, which says what a bare number is in; a radius may be given as a diameter and the other way round.
 * @returns fails with `shape/no-size`, `shape/twice`, `shape/unreadable`, `shape/out-of-range` or `shape/no-choice`.
 */
export function readSizes(kind: Pick<ShapeKind, 'name' | 'sizes'>, typed: readonly TypedSize[]): Result<Sizes> {
  const values: Record<string, Value> = {};
  const implied: Record<string, string> = {};
  for (const [name, text] of typed) {
    // A name that may stand for several sizes stands for the first that is not given by its own.
    const isFree = ({ name: own }: SizeField): boolean =>
      values[own] === undefined && !typed.some(([other]) => other !== name && plainName(other) === own);
    const meant = meaningOf(name, kind.sizes, isFree);
    if (meant === null) return fail('shape/no-size', noSuch(kind, name));
    const { field } = meant;
    if (values[field.name] !== undefined)
      return fail('shape/twice', `${shown(kind)} is given ${field.name} twice: leave one of them out.`);
    const read = valueOf(meant, text);
    if (!read.ok) return read;
    values[field.name] = read.value;
    Object.assign(implied, meant.sets);
  }
  for (const [name, word] of Object.entries(implied)) {
    if (values[name] !== undefined && values[name] !== word)
      return fail(
        'shape/twice',
        `${shown(kind)} is told that its size is of the ${word}, and ${name}=${String(values[name])}: leave one of them out.`,
      );
    values[name] = word;
  }
  for (const field of kind.sizes)
    if (values[field.name] === undefined && field.default !== undefined) values[field.name] = field.default;
  const inOrder = kind.sizes.flatMap(({ name }) => (values[name] === undefined ? [] : [[name, values[name]] as const]));
  return ok(new Sizes(Object.fromEntries(inOrder)));
}

const shown = ({ name }: Pick<ShapeKind, 'name'>): string => `The shape ${name}`;

function noSuch(kind: Pick<ShapeKind, 'name' | 'sizes'>, name: string): string {
  const names = kind.sizes.map((field) => field.name).join(', ');
  return names === ''
    ? `${shown(kind)} has no size ${name}: it takes none.`
    : `${shown(kind)} has no size ${name}: it takes ${names}.`;
}

/** Lower case with `_` between words; `K`, `R` and their like stand alone. */
const plainName = (name: string): string =>
  name
    .replace(/([a-z0-9])([A-Z])/g, '$1_$2')
    .replace(/[-\s]+/g, '_')
    .toLowerCase();

type IsFree = (field: SizeField) => boolean;

function meaningOf(name: string, fields: readonly SizeField[], isFree: IsFree): Meant | null {
  const exact = byName(name, fields, isFree);
  if (exact !== null) return { ...exact, unit: 'mm', scale: 1 };
  const plainly = plainName(name);
  const unit = /_in(ch|ches)?$/.test(plainly) ? 'in' : 'mm';
  const bare = plainly.replace(/_(mm|in|inch|inches|deg|degrees)$/, '');
  for (const word of [plainly, bare, `${bare}_deg`]) {
    const found = byName(word, fields, isFree);
    if (found !== null) return { ...found, unit, scale: 1 };
  }
  const other = bare.includes('diameter') ? bare.replace('diameter', 'radius') : bare.replace('radius', 'diameter');
  const found = other === bare ? null : byName(other, fields, isFree);
  return found === null ? null : { ...found, unit, scale: bare.includes('diameter') ? 0.5 : 2 };
}

/** The field of that name, else one of which it is another name. */
function byName(name: string, fields: readonly SizeField[], isFree: IsFree): Pick<Meant, 'field' | 'sets'> | null {
  const isSame = (one: string): boolean => one === name || one.toLowerCase() === name;
  const own = fields.find((field) => isSame(field.name));
  if (own !== undefined) return { field: own, sets: {} };
  const known = fields.flatMap((field) =>
    (field.also ?? []).flatMap((one) => (isSame(one.name) ? [{ field, sets: one.sets ?? {} }] : [])),
  );
  return known.find(({ field }) => isFree(field)) ?? known.at(0) ?? null;
}

function valueOf({ field, unit, scale }: Meant, text: string): Result<Value> {
  const { name, kind, choices, isList } = field;
  if (kind === 'choice') {
    const word = text.trim().toLowerCase();
    if (choices?.includes(word) === true) return ok(word);
    return fail(
      'shape/no-choice',
      `${name} is one of ${(choices ?? []).join(', ')}, not ${text === '' ? 'nothing' : text}.`,
    );
  }
  const row = isList === true ? readSizeRow(text, field, unit) : null;
  const read = isList === true ? row : readSize(text, kind, unit);
  if (read === null)
    return fail(
      'shape/unreadable',
      `${name} is ${EXAMPLES[kind]}${isList === true ? ' or several with commas between' : ''}, not ${text === '' ? 'nothing' : text}.`,
    );
  const numbers = (typeof read === 'number' ? [read] : read).map((one) => one * scale);
  for (const one of numbers) {
    const fault = rangeFault(field, one, unitTyped(text, unit));
    if (fault !== null) return fail('shape/out-of-range', fault);
  }
  return ok(typeof read === 'number' ? numbers[0] : numbers);
}

const EXAMPLES = {
  length: 'a length such as 120, 4 1/2 in or 114,3 mm',
  angle: 'an angle in degrees such as 45',
  count: 'a whole number',
  ratio: 'a number such as 0.5',
  number: 'a number',
  choice: 'a word',
} as const;

/** Inches where the text says so, or says nothing and the name does. */
const unitTyped = (text: string, bare: 'mm' | 'in'): 'mm' | 'in' =>
  /(in|inch|inches|["″”])\s*$/i.test(text) || (bare === 'in' && /[\d.]\s*$/.test(text)) ? 'in' : 'mm';

/** Why a number may not be a size, one sentence, lengths in the unit they were typed in; null when it may. */
export function rangeFault(
  { name, kind, unit, least, over, most }: SizeField,
  value: number,
  typedIn: 'mm' | 'in' = 'mm',
): string | null {
  const isInches = kind === 'length' && typedIn === 'in';
  const shown = (size: number): string =>
    String(Number((isInches ? size / MM_PER_INCH : size).toPrecision(isInches ? 4 : 9)));
  const unitText = isInches ? ' in' : unit === '' ? '' : ` ${unit}`;
  const isWhole = kind !== 'count' || Number.isInteger(value);
  const isIn =
    (least === undefined || value >= least) &&
    (over === undefined || value > over) &&
    (most === undefined || value <= most);
  if (isWhole && isIn) return null;
  const low = over !== undefined ? `over ${shown(over)}` : least !== undefined ? `at least ${shown(least)}` : '';
  const high = most !== undefined ? `at most ${shown(most)}` : '';
  const range = [low, high].filter((one) => one !== '').join(' and ');
  return `${name} must be ${kind === 'count' ? 'a whole number ' : ''}${range}${unitText}, not ${shown(value)}${unitText}.`;
}
