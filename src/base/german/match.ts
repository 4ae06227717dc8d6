import type { Saying } from './saying.ts';

/** A saying that is ready to be held against a text. */
export interface Pattern {
  readonly english: RegExp;
  /** Its holes in the order of the English. */
  readonly holes: readonly string[];
  readonly german: string;
}

/** A hole, with the unit behind it. Areas keep their own. */
const HOLE = /\{(\w)\}( mm\b(?![²³]))?/g;
const LENGTH = '([\\d\u2212-].*?[ \u00a0](?:mm|in))';

/** Sayings with the longest wording first: what is said in general gives way to what is said exactly. */
export const patternsOf = (sayings: readonly Saying[]): readonly Pattern[] =>
  [...sayings].sort(([a], [b]) => wording(b) - wording(a)).map(patternOf);

const wording = (english: string): number => english.replace(HOLE, '').length;

function patternOf([english, german]: Saying): Pattern {
  const holes: string[] = [];
  let source = '';
  let from = 0;
  for (const { 0: whole, 1: hole, 2: unit, index } of english.matchAll(HOLE)) {
    source += literal(english.slice(from, index)) + (unit === undefined ? '(.+?)' : LENGTH);
    holes.push(hole);
    from = index + whole.length;
  }
  return {
    english: new RegExp(`^${source}${literal(english.slice(from))}$`),
    holes,
    german: german.replace(HOLE, '{$1}').replace(/\} (?=%|cm³|mm²)/g, '}\u00a0'),
  };
}

/** Blanks of either kind: figures keep theirs with their unit. */
const literal = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replaceAll(' ', '[ \u00a0]');

/** How what is not translated is written: figures and the like in the holes `{1}` to `{9}`, names in `{N}` and other capitals. */
interface Holding {
  readonly figures: (text: string) => string;
  readonly name: (text: string) => string;
}

/**
 * @param known what a text of words is in German, null where that is not known.
 * @returns the text in German by the first pattern that fits it, null where none does.
 */
export function sayBy(
  text: string,
  patterns: readonly Pattern[],
  known: (words: string) => string | null,
  { figures, name }: Holding = { figures: kept, name: (text) => text },
): string | null {
  for (const { english, holes, german } of patterns) {
    const found = english.exec(text);
    if (found === null) continue;
    const inHole = (hole: string, own: string): string | null =>
      isName(hole) ? name(own) : isKept(hole) ? figures(own) : known(own);
    const said = new Map(holes.map((hole, i) => [hole, inHole(hole, found[i + 1])]));
    if ([...said.values()].includes(null)) continue;
    return german.replace(/\{(\w)\}/g, (_, hole: string) => said.get(hole) ?? '');
  }
  return null;
}

const isKept = (hole: string): boolean => /\d/.test(hole);

const isName = (hole: string): boolean => /[A-Z]/.test(hole);

/** Words between figures and between the letters of seams. */
export const kept = (text: string): string =>
  text
    .replace(/(\d) to (?=[\d\u2212-])/g, '$1 bis ')
    .replace(/ and (\d+) more$/, ' und $1 weitere')
    .replace(/^((?:[\dA-Z]{1,3}(?:, )?)+) and (?=[\dA-Z]{1,3}$)/, '$1 und ')
    .replace(/(\d) (?=(?:mm|in)$)/, '$1\u00a0');
