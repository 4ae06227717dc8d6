import { wayText, spotText } from '../places.ts';
import { ARTWORK } from './artwork.ts';
import { ASSEMBLY } from './assembly.ts';
import { CORE } from './core.ts';
import { FAULT_PHRASES, FAULTS } from './faults.ts';
import { FILES } from './files.ts';
import { FOAM } from './foam.ts';
import { INSERTS } from './inserts.ts';
import { plainTold } from '../../plain-told.ts';
import { patternsOf, sayBy, type Pattern } from '../match.ts';
import { PHRASES } from './phrases.ts';
import { PIECES } from './pieces.ts';
import { READ } from './read.ts';
import type { Saying, Sentences } from '../saying.ts';
import { SHAPES } from './shapes.ts';
import { SHEETS } from './sheets.ts';
import { SIZE } from './size.ts';
import { STACK } from './stack.ts';
import { WORK_STEPS } from '../work-steps.ts';
import { WEAR } from './wear.ts';
import { WISHES } from './wishes.ts';

/** Every sentence of the core that is said in German, by its code. */
export const SENTENCES: Sentences = {
  ...ARTWORK,
  ...ASSEMBLY,
  ...CORE,
  ...FAULTS,
  ...FILES,
  ...FOAM,
  ...INSERTS,
  ...PIECES,
  ...READ,
  ...SHAPES,
  ...SHEETS,
  ...SIZE,
  ...STACK,
  ...WEAR,
  ...WISHES,
};

/** The name of a part before what is said of it. */
const PREFIX = /^([^:.]{1,60}: )(.+)$/;
const BETWEEN = /(?<=[.!?]) (?=\p{Lu})/u;

/** Made ready when the first sentence is said. */
let patterns: { readonly sentences: readonly Pattern[]; readonly phrases: readonly Pattern[] } | null = null;

/** The last sentences that were said: a window is drawn often, and says the same. */
const MOST_SAID = 500;
const said = new Map<string, string | null>();

/** @returns a text of the core in German, whole; null where a sentence of it is not known. */
export function sayInGerman(text: string): string | null {
  const before = said.get(text);
  if (before !== undefined) return before;
  if (said.size >= MOST_SAID) said.clear();
  const german = sayAll(text);
  said.set(text, german);
  return german;
}

function sayAll(text: string): string | null {
  const whole = sayOne(text);
  if (whole !== null) return whole;
  const parts = text.split(BETWEEN);
  const each = parts.length > 1 ? parts.map((part) => sayOne(part) ?? sayNamed(part)) : [null];
  return each.includes(null) ? sayNamed(text) : each.join(' ');
}

function sayNamed(text: string): string | null {
  const named = PREFIX.exec(text);
  const rest = named === null ? null : sayAll(named[2]);
  return named === null || rest === null ? null : named[1] + rest;
}

const sayOne = (text: string): string | null => spotText(text) ?? sayBy(text, ready().sentences, phrase);

/** A figure is the same in every language. */
const FIGURE = /^\d+(?:[.,]\d+)?$/;

const phrase = (text: string): string | null =>
  FIGURE.test(text)
    ? text
    : (wayText(text) ?? sayBy(text, ready().phrases, phrase) ?? (/[.:]/.test(text) ? sayAll(text) : null));

const ready = () =>
  (patterns ??= {
    sentences: patternsOf(plain([...Object.values(SENTENCES).flat(), ...WORK_STEPS])),
    phrases: patternsOf(plain([...PHRASES, ...FAULT_PHRASES])),
  });

/** As the texts come to the door. */
const plain = (sayings: readonly Saying[]): readonly Saying[] =>
  sayings.map(([english, german]) => [plainTold(english), german]);
