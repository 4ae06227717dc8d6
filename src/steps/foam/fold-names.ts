import { DisjointSets } from '../../base/disjoint-sets.ts';
import type { Say } from '../../base/paper-language.ts';
import type { Vec2 } from '../../geom/vec.ts';
import { SMALLEST_WORDS_MM } from '../../model/line-style.ts';
import { nearestOnRings } from './cut-lines.ts';
import { chordAt, lengthOf, pointAlong, readableAngle, walkedLine, type WalkedLine } from './edge-places.ts';
import type { PaperPiece } from './template-lines.ts';
import { foldLinesOf } from './template-words.ts';
import { CLEARANCE_MM, type Anchor, type WordBoard } from './word-board.ts';
import { blockOf, boxAt, type WordBlock } from './word-block.ts';

/** Heights tried for a fold's words, mm, places along it in shares of its length, and steps off it, mm. */
const FOLD_HEIGHTS_MM = [3, SMALLEST_WORDS_MM];
const PLACES_ALONG = [0.5, 0.4, 0.6, 0.3, 0.7, 0.22, 0.78, 0.15, 0.85];
const STEPS_OFF_MM = [0, 1, 2.5, 5];

/** A fold line shorter than this has no room for words of its own, mm. */
const LEAST_TOLD_MM = 14;

/** Each fold's word and angle beside its line, or for short lines once for all that hang together. */
export function nameFolds(board: WordBoard, paper: PaperPiece, say: Say): void {
  for (const { from, to, lines: told } of toldFolds(paper)) {
    const lines = told.map(say);
    const line = walkedLine(Float64Array.of(from.x, from.y, to.x, to.y));
    if (writeAtFold(board, line, lines)) continue;
    board.writeBeside(
      linesOf(lines, SMALLEST_WORDS_MM),
      [0.5, 0.3, 0.7].map((share) => wayOut(paper, pointAlong(line, share * lengthOf(line)))),
    );
  }
}

/** A place inside the piece with its shortest way out. */
function wayOut({ cutRings }: PaperPiece, target: Vec2): Anchor {
  const edge = nearestOnRings(cutRings.slice(0, 1), target);
  const insideMm = Math.hypot(edge.x - target.x, edge.y - target.y);
  const outward =
    insideMm > 0 ? { x: (edge.x - target.x) / insideMm, y: (edge.y - target.y) / insideMm } : { x: 1, y: 0 };
  return { target, outward, insideMm };
}

const linesOf = (lines: readonly string[], heightMm: number): WordBlock =>
  blockOf(lines.map((text) => ({ text, heightMm })));

/** In one line or in several, as large as fits. */
const blocksFor = (lines: readonly string[]): readonly WordBlock[] =>
  FOLD_HEIGHTS_MM.flatMap((height) =>
    lines.length === 1 ? [linesOf(lines, height)] : [linesOf([lines.join(', ')], height), linesOf(lines, height)],
  );

function writeAtFold(board: WordBoard, line: WalkedLine, lines: readonly string[]): boolean {
  const length = lengthOf(line);
  for (const block of blocksFor(lines)) {
    for (const step of STEPS_OFF_MM) {
      for (const share of PLACES_ALONG) {
        const chord = chordAt(line, share * length, Math.min(block.widthMm, length));
        if (chord === null) continue;
        for (const sign of [-1, 1]) {
          const away = sign * (block.heightMm / 2 + CLEARANCE_MM + 0.1 + step);
          const [x, y] = [chord.middle.x + away * chord.right.x, chord.middle.y + away * chord.right.y];
          if (board.tryInside(block, boxAt(block, x, y, readableAngle(chord.along)))) return true;
        }
      }
    }
  }
  return false;
}

/** A line that carries words. */
interface ToldFold {
  readonly from: Vec2;
  readonly to: Vec2;
  readonly lines: readonly string[];
}

/** Ends of fold lines that lie this near each other are one point, mm. */
const SAME_END_MM = 1e-6;

/**
 * Which lines carry words. Lines long enough speak for themselves; of those that touch and say the same only the longest does. Short ones that
 * hang together and bend the same way are told once, with their least and greatest angle, unless one long enough hangs with them.
 */
function toldFolds(paper: PaperPiece): readonly ToldFold[] {
  const { piece } = paper;
  const folds = paper.folds.map((fold) => ({
    ...fold,
    lengthMm: Math.hypot(fold.to.x - fold.from.x, fold.to.y - fold.from.y),
  }));
  const isLong = (i: number): boolean => folds[i].lengthMm >= LEAST_TOLD_MM;
  const longest = (group: readonly number[]): number =>
    group.reduce((best, i) => (folds[i].lengthMm > folds[best].lengthMm ? i : best));
  const words = folds.map((fold) => foldLinesOf(piece, [fold]));
  const linesFor = (group: readonly number[]): readonly string[] =>
    foldLinesOf(
      piece,
      group.map((i) => folds[i]),
    ).lines;
  const ownWords = hangingTogether(folds, (i, j) => isLong(i) && isLong(j) && words[i].lines[0] === words[j].lines[0]);
  const sameWay = hangingTogether(folds, (i, j) => words[i].isOut === words[j].isOut);
  return [
    ...ownWords
      .filter((group) => isLong(group[0]))
      .map((group) => ({ ...folds[longest(group)], lines: linesFor(group) })),
    ...sameWay
      .filter((group) => !group.some(isLong))
      .map((group) => ({
        ...folds[longest(group)],
        lines: linesFor(group),
      })),
  ];
}

/** Groups of lines with a common end for which `isOne` holds, each in order, by their first member. */
function hangingTogether(
  folds: readonly { readonly from: Vec2; readonly to: Vec2 }[],
  isOne: (i: number, j: number) => boolean,
): readonly (readonly number[])[] {
  const groups = new DisjointSets(folds.length);
  const at = new Map<string, number[]>();
  folds.forEach(({ from, to }, i) => {
    for (const { x, y } of [from, to]) {
      const key = `${Math.round(x / SAME_END_MM)} ${Math.round(y / SAME_END_MM)}`;
      const others = at.get(key) ?? [];
      for (const j of others) if (isOne(i, j)) groups.join(i, j);
      at.set(key, [...others, i]);
    }
  });
  const members = new Map<number, number[]>();
  folds.forEach((_, i) => members.set(groups.find(i), [...(members.get(groups.find(i)) ?? []), i]));
  return [...members.values()];
}
