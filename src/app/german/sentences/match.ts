import { plainTold } from '../../plain-told.ts';
import type { Saying } from './sentence.ts';

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
  const plain = plainTold(english);
  const holes: string[] = [];
  let source = '';
  let from = 0;
  for (const { 0: whole, 1: hole, 2: unit, index } of plain.matchAll(HOLE)) {
    source += literal(plain.slice(from, index)) + (unit === undefined ? '(.+?)' : LENGTH);
    holes.push(hole);
    from = index + whole.length;
  }
  return {
    english: new RegExp(`^${source}${literal(plain.slice(from))}$`),
    holes,
    german: german.replace(HOLE, '{$1}').replace(/\} (?=%|cm³|mm²)/g, '}\u00a0'),
  };
}

/** Blanks of either kind: figures keep theirs with their unit. */
const literal = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replaceAll(' ', '[ \u00a0]');

/**
 * @param known what a text of words is in German, null where that is not known.
 * @returns the text in German by the first pattern that fits it, null where none does.
 */
export function sayBy(
  text: string,
  patterns: readonly Pattern[],
  known: (words: string) => string | null,
): string | null {
  for (const { english, holes, german } of patterns) {
    const found = english.exec(text);
    if (found === null) continue;
    const said = new Map(holes.map((hole, i) => [hole, isKept(hole) ? kept(found[i + 1]) : known(found[i + 1])]));
    if ([...said.values()].includes(null)) continue;
    return german.replace(/\{(\w)\}/g, (_, hole: string) => said.get(hole) ?? '');
  }
  return null;
}

const isKept = (hole: string): boolean => /\d/.test(hole);

/** Words between figures and between the letters of seams. */
const kept = (text: string): string =>
  text
    .replace(/(\d) to (?=[\d\u2212-])/g, '$1 bis ')
    .replace(/ and (\d+) more$/, ' und $1 weitere')
    .replace(/^((?:[\dA-Z]{1,3}(?:, )?)+) and (?=[\dA-Z]{1,3}$)/, '$1 und ')
    .replace(/(\d) (?=(?:mm|in)$)/, '$1\u00a0');
