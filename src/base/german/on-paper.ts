import type { Say } from '../paper-language.ts';
import { DATA } from './data.ts';
import { gluingText } from './gluing.ts';
import { kept, patternsOf, sayBy, type Pattern } from './match.ts';
import { ON_BUILD_SHEET } from './on-build-sheet.ts';
import { ON_PAGES } from './on-pages.ts';
import { ON_TEMPLATE } from './on-template.ts';
import { PAPER_PHRASES } from './paper-phrases.ts';
import { PLACES } from './places.ts';
import { sayInGerman } from './sentences/say.ts';
import { WORK_STEPS } from './work-steps.ts';

/** Made ready when the first line is said. */
let patterns: { readonly lines: readonly Pattern[]; readonly phrases: readonly Pattern[] } | null = null;
const ready = () =>
  (patterns ??= {
    lines: patternsOf([...ON_TEMPLATE, ...ON_PAGES, ...ON_BUILD_SHEET, ...WORK_STEPS]),
    phrases: patternsOf(PAPER_PHRASES),
  });

/** The last lines that were said: pages of one job say many of them often. */
const MOST_SAID = 2000;
const said = new Map<string, string>();

/** A line of paper in German, whole; as it is where it is not known. */
export const sayOnPaper: Say = (text) => {
  const before = said.get(text);
  if (before !== undefined) return before;
  if (said.size >= MOST_SAID) said.clear();
  const german = sayLine(text) ?? text;
  said.set(text, german);
  return german;
};

/** Whether a line needs no words: figures with their units, letters of seams and the pieces they lead to. */
const WORDLESS = /^[^\p{L}]*(?:(?:mm|cm[²³]|m[²³]|ml|l|kg|g|h|min|in)\b[^\p{L}]*)*$/u;
const SEAM = /^[A-Z]{1,3}(?:\/[A-Z]{1,3})?(?: → \d+)?$/;

const sayLine = (text: string): string | null => sayParts(text) ?? sayWhole(text) ?? sentences(text);

function sayWhole(text: string): string | null {
  if (Object.hasOwn(DATA, text)) return DATA[text];
  if (SEAM.test(text)) return text;
  const line = sayBy(text, ready().lines, phrase, { figures, name });
  if (line !== null) return line;
  // After what leans in, `5° in`: inches read alike.
  if (WORDLESS.test(text)) return figures(text);
  const glued = gluingText(text);
  return glued === null ? cautionText(text) : figures(glued);
}

/** What is put together by dots, where each part is known; null for other texts. */
function sayParts(text: string): string | null {
  const parts = text.split(' · ');
  const each = parts.length > 1 ? parts.map(sayWhole) : [null];
  return each.includes(null) ? null : each.join(' · ');
}

/** What is found of a job, as the window says it. */
function sentences(text: string): string | null {
  const german = sayInGerman(figures(text));
  return german === null || german === text ? null : german;
}

/** `Knife: Fresh blade …` */
function cautionText(text: string): string | null {
  const colon = text.indexOf(': ');
  const [title, rest] = [text.slice(0, colon), text.slice(colon + 2)];
  return colon > 0 && Object.hasOwn(DATA, title) && Object.hasOwn(DATA, rest) ? `${DATA[title]}: ${DATA[rest]}` : null;
}

/** Words within a line. */
function phrase(text: string): string | null {
  if (text === '' || WORDLESS.test(text) || LETTERS.test(text)) return figures(text);
  const place = Object.hasOwn(PLACES, text) ? PLACES[text] : null;
  return place ?? sayBy(text, ready().phrases, phrase, { figures, name }) ?? sayWhole(text) ?? sentences(text);
}

/** Letters of edges: `A, B/C, D`. */
const LETTERS = /^[A-Z]{1,3}(?:\/[A-Z]{1,3})?(?:, [A-Z]{1,3}(?:\/[A-Z]{1,3})?)*$/;

/** Figures with the comma of German. */
const figures = (text: string): string => kept(text).replace(/(?<![\p{L}\d.,])(\d+)\.(\d+)(?![.\d])/gu, '$1,$2');

/** What a piece without a name is called. */
const NAMELESS = /^Piece (\d+)/;

/** Names of data files are known, those of the maker's stay. */
function name(text: string): string {
  if (NAMELESS.test(text)) return text.replace(NAMELESS, 'Stück $1');
  const small = text.slice(0, 1).toLowerCase() + text.slice(1);
  if (Object.hasOwn(DATA, text)) return DATA[text];
  return Object.hasOwn(DATA, small) ? DATA[small].slice(0, 1).toUpperCase() + DATA[small].slice(1) : text;
}
