import { SMALLEST_WORDS_MM } from '../../model/line-style.ts';
import type { Words } from '../../model/template.ts';
import { holdsBox, type Cell } from './label-place.ts';
import { LEADING } from './pen.ts';
import { wrapText } from './text-fit.ts';
import { turnedWordsBox, wordsBox } from './words-box.ts';

/** So that words made to fit exactly are not found too long again, as a share. */
const ROUNDING_SHARE = 1e-6;

/** Words too long for any cell: smaller while they can be read, then in several lines. The line itself when nothing helps. */
export function refitLine(words: Words, cells: readonly Cell[]): readonly Words[] {
  const box = wordsBox(words);
  const shares = cells.map((cell) =>
    Math.min((cell.maxX - cell.minX) / (box.maxX - box.minX), (cell.maxY - cell.minY) / (box.maxY - box.minY)),
  );
  const share = Math.max(...shares) * (1 - ROUNDING_SHARE);
  const smaller = { ...words, heightMm: Math.max(SMALLEST_WORDS_MM, words.heightMm * Math.min(1, share)) };
  if (cells.some((cell) => holdsBox(cell, turnedWordsBox(smaller)))) return [smaller];
  const small = turnedWordsBox({ ...words, heightMm: SMALLEST_WORDS_MM });
  const room = 2 * small.halfWidth * share * (words.heightMm / SMALLEST_WORDS_MM) - SMALLEST_WORDS_MM;
  const lines = wrapText(words.text, SMALLEST_WORDS_MM, room);
  if (lines.length < 2) return [words];
  const down = LEADING * SMALLEST_WORDS_MM;
  return lines.map((text, i) => ({
    ...words,
    text,
    heightMm: SMALLEST_WORDS_MM,
    at: {
      x: words.at.x + i * down * Math.sin(words.angleRad),
      y: words.at.y - i * down * Math.cos(words.angleRad),
    },
  }));
}
