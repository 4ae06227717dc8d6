import type { Vec2 } from '../../geom/vec.ts';
import type { FoamPiece } from '../../model/foam-piece.ts';
import { SMALLEST_WORDS_MM } from '../../model/line-style.ts';
import { chordAt, lengthOf, readableAngle, walkedLine, type WalkedLine } from './edge-places.ts';
import type { PaperPiece } from './template-lines.ts';
import { foldWords } from './template-words.ts';
import { CLEARANCE_MM, type WordBoard } from './word-board.ts';
import { boxAt, oneLine } from './word-block.ts';

/** Heights tried for a fold's words, mm, places along it in shares of its length, and steps off it, mm. */
const FOLD_HEIGHTS_MM = [3, SMALLEST_WORDS_MM];
const PLACES_ALONG = [0.5, 0.4, 0.6, 0.3, 0.7, 0.22, 0.78, 0.15, 0.85];
const STEPS_OFF_MM = [0, 1, 2.5, 5];

/** Each fold's word and angle beside its line. Of lines that carry on from one another with the same words the longest speaks for all. */
export function nameFolds(board: WordBoard, { piece, flip }: PaperPiece): void {
  for (const group of speakingFolds(piece)) {
    const { text } = foldWords(piece, group.angleDeg);
    const line = walkedLine(Float64Array.of(flip * group.from.x, group.from.y, flip * group.to.x, group.to.y));
    if (!writeAtFold(board, line, text)) {
      const chord = chordAt(line, lengthOf(line) / 2, lengthOf(line));
      if (chord !== null) board.writeBeside(oneLine(text, SMALLEST_WORDS_MM), [{ target: chord.middle, outward: chord.right }]);
    }
  }
}

function writeAtFold(board: WordBoard, line: WalkedLine, text: string): boolean {
  const length = lengthOf(line);
  for (const height of FOLD_HEIGHTS_MM) {
    const block = oneLine(text, height);
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

interface SpeakingFold {
  readonly from: Vec2;
  readonly to: Vec2;
  readonly angleDeg: number;
}

/** Ends of fold lines that lie this near each other are one point, mm. */
const SAME_END_MM = 1e-6;

function speakingFolds(piece: FoamPiece): readonly SpeakingFold[] {
  const groups: { words: string; ends: Set<string>; longest: SpeakingFold; lengthMm: number }[] = [];
  const key = (p: Vec2): string => `${Math.round(p.x / SAME_END_MM)} ${Math.round(p.y / SAME_END_MM)}`;
  for (const fold of piece.folds) {
    const words = foldWords(piece, fold.angleDeg).text;
    const ends = [key(fold.from), key(fold.to)];
    const lengthMm = Math.hypot(fold.to.x - fold.from.x, fold.to.y - fold.from.y);
    const touching = groups.filter((group) => group.words === words && ends.some((end) => group.ends.has(end)));
    const joined = { words, ends: new Set(ends), longest: fold, lengthMm };
    for (const group of touching) {
      for (const end of group.ends) joined.ends.add(end);
      if (group.lengthMm > joined.lengthMm) [joined.longest, joined.lengthMm] = [group.longest, group.lengthMm];
      groups.splice(groups.indexOf(group), 1);
    }
    groups.push(joined);
  }
  return groups.map(({ longest }) => longest);
}

