import { formatArea, formatFine, formatInches, isWholeSixteenths } from './format-length.ts';

/** Lengths under this are told in thousandths of an inch: in sixteenths 0.3 mm would be nothing. */
const FINE_MM = 3;

/**
 * `12 mm`, `12.5 mm`, and rows of figures with one unit: `300 × 200 mm`, `12 and 13 mm`, `3 to 4 mm`, and after `of` or `at` also `of 50, 75 and 110 mm`.
 */
const IN_MM =
  /(?<![\p{L}\d.,])(?:(?<=\b(?:of|at)[ \u00a0]\u2212?)\d+(?:[.,]\d+)?(?:, \u2212?\d+(?:[.,]\d+)?)+(?: and \d+(?:[.,]\d+)?)?|\d+(?:[.,]\d+)?(?:[ \u00a0]?(?:×|x|by|and|to|or)[ \u00a0]?\d+(?:[.,]\d+)?)*)[ \u00a0]mm\b(?![²³])/gu;
const FIGURE = /\d+(?:[.,]\d+)?/g;
const IN_CM2 = /(?<![\p{L}\d.,])(\d+(?:\.\d+)?)[ \u00a0]cm²/gu;

/** Before a thickness of foam: the word itself, layers and what is used of it, or letters that name a kind of it, as EVA. */
const BEFORE_FOAM = /(?:\b[Ff]oam (?:of )?|\blayers of |\buse at most |\p{Lu}{2,}[ \u00a0])$/u;
const AFTER_FOAM = /^ foam\b/;

/** What the maker must read off a rule in mm: the sides of the square that is measured. */
const READ_IN_MM = /\bmust read $/;

/**
 * A text with its lengths in inches by sixteenths, under 3 mm by thousandths, and its cm² in square inches. A thickness of foam that is sold by
 * the millimetre keeps it: 4 and 5 mm would both be 3/16 in.
 * @param foams names of foams: a thickness before one is of foam, and a length within one is part of the name.
 */
export function inInches(text: string, foams: readonly string[] = []): string {
  if (!/\d/.test(text)) return text;
  const parts = foams.length === 0 ? [text] : text.split(partedBy(foams));
  return parts.map((part, i) => (i % 2 === 1 ? part : measured(part, parts[i + 1]))).join('');
}

/** Names of foams, longest first, each kept whole. */
const partedBy = (names: readonly string[]): RegExp => {
  const literal = [...names]
    .sort((a, b) => b.length - a.length)
    .map((name) => name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'));
  return new RegExp(`(${literal.join('|')})`, 'u');
};

const measured = (text: string, nameAfter: string | undefined): string =>
  text
    .replace(IN_MM, (all: string, at: number) => {
      const [before, after] = [text.slice(0, at), text.slice(at + all.length)];
      if (READ_IN_MM.test(before)) return all;
      const isFoam = BEFORE_FOAM.test(before) || AFTER_FOAM.test(after) || (after === ' ' && nameAfter !== undefined);
      const figures = all.replace(/[ \u00a0]mm$/, '');
      return isFoam ? thickness(figures, all) : figures.replace(FIGURE, length);
    })
    .replace(IN_CM2, (_, figure: string) => formatArea(100 * Number(figure), 'in'));

const numberOf = (figure: string): number => Number(figure.replace(',', '.'));

function length(figure: string): string {
  const mm = numberOf(figure);
  return mm > 0 && mm < FINE_MM ? formatFine(mm, 'in') : formatInches(mm);
}

/** Of foam: inches only where it is sold by them. */
const thickness = (figures: string, all: string): string => {
  const each = figures.match(FIGURE) ?? [];
  return each.every((figure) => isSoldInInches(numberOf(figure)))
    ? figures.replace(FIGURE, (figure) => formatInches(numberOf(figure)))
    : all;
};

/** Whole millimetres are never taken for inches; others may have been rounded to tenths. */
const isSoldInInches = (mm: number): boolean =>
  !Number.isInteger(mm) && [mm, mm + 0.05, mm - 0.05].some((near) => isWholeSixteenths(near));
