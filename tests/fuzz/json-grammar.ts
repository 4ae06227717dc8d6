import { HOSTILE_NAMES } from './hostile-values.ts';
import { below, bytesOf, oneOf, textOf, type Random } from './target.ts';

type Json = unknown;

const WILD: readonly Json[] = [
  ...[null, true, false, 0, -0, 1, -1, 0.5, 1e-320, 1e308, 1e21, 2 ** 31, 2 ** 32, 2 ** 53, -1e9, 359.999, 1e12],
  ...[
    '',
    ' ',
    'a',
    '1',
    '10 mm',
    '1e400',
    [],
    {},
    [[]],
    [null],
    [0, 0],
    [0, 0, 0],
    [1, 2, 3],
    { a: 1 },
    [{}],
    'x'.repeat(300),
  ],
];

/** Figures that JSON can say and `JSON.stringify` does not: put in as text afterwards. */
const WILD_TEXTS = ['1e400', '-1e400', '1e-400', '-0', '0.1e1', '123456789012345678901234567890', '1E+2'];

/** A JSON text with a few of its values, keys and lists made wild; whole as JSON in nearly all cases. */
export function wildJson(random: Random, bytes: Uint8Array): Uint8Array {
  let root: Json;
  try {
    root = JSON.parse(textOf(bytes));
  } catch {
    return bytes;
  }
  const times = random() < 0.6 ? 1 : 1 + below(random, 5);
  for (let i = 0; i < times; i += 1) root = changed(random, root);
  let text = JSON.stringify(root) ?? 'null';
  if (text.length < 4000 && random() < 0.05)
    text = text.replace(/-?\d+(\.\d+)?/g, (one) => (random() < 0.1 ? oneOf(random, WILD_TEXTS) : one));
  if (random() < 0.01) text = text.replace(/"[^"]{0,20}"/, (one) => deep(random, one));
  return bytesOf(text);
}

/** A value within many lists or objects. */
function deep(random: Random, inner: string): string {
  const depth = oneOf(random, [3, 50, 500, 3000]);
  return random() < 0.5 ? '['.repeat(depth) + ']'.repeat(depth) : '{"a":'.repeat(depth) + inner + '}'.repeat(depth);
}

/** The tree with one place of it changed. */
function changed(random: Random, value: Json): Json {
  const places: { holder: object; key: string | number }[] = [];
  collect(value, places);
  if (places.length === 0) return oneOf(random, WILD);
  const { holder, key } = oneOf(random, places);
  const fields = holder as Record<string | number, Json>;
  const list = Array.isArray(holder) ? (holder as Json[]) : null;
  switch (below(random, 10)) {
    case 0:
      if (list === null) Reflect.deleteProperty(holder, key);
      else list.splice(Number(key), 1);
      break;
    case 1:
      if (list === null) set(fields, oneOf(random, HOSTILE_NAMES), fields[key]);
      else if (list.length < 2000)
        list.splice(Number(key), 0, ...Array.from({ length: random() < 0.98 ? 1 : 300 }, () => list[Number(key)]));
      break;
    case 2:
      set(fields, key, oneOf(random, HOSTILE_NAMES));
      break;
    case 3:
      set(fields, key, structuredClone(fields[oneOf(random, Object.keys(fields))]));
      break;
    case 4: {
      const other = oneOf(random, places);
      set(fields, key, structuredClone((other.holder as Record<string | number, Json>)[other.key]));
      break;
    }
    case 5:
      set(
        fields,
        key,
        typeof fields[key] === 'number'
          ? fields[key] * oneOf(random, [-1, 0, 1e-9, 1e9, 1 + 1e-15, 0.5])
          : [fields[key]],
      );
      break;
    default:
      set(fields, key, structuredClone(oneOf(random, WILD)));
  }
  return value;
}

/** As a field of its own, whatever its name is. */
function set(fields: object, key: string | number, value: Json): void {
  Reflect.defineProperty(fields, key, { value, writable: true, enumerable: true, configurable: true });
}

function collect(value: Json, places: { holder: object; key: string | number }[]): void {
  if (typeof value !== 'object' || value === null || places.length > 20_000) return;
  for (const key of Object.keys(value)) {
    places.push({ holder: value, key });
    collect((value as Record<string, Json>)[key], places);
  }
}
