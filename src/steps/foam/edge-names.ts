import { inEnglish } from '../../base/paper-language.ts';
import { SMALLEST_WORDS_MM } from '../../model/line-style.ts';
import type { FoamSeam, PieceEdge } from '../../model/foam-piece.ts';
import { chordAt, lengthOf, pointAlong, readableAngle, walkedLine, type WalkedLine } from './edge-places.ts';
import { edgeLine, type PaperPiece } from './template-lines.ts';
import { edgeWords, type WordContext } from './template-words.ts';
import { CLEARANCE_MM, type Anchor, type WordBoard } from './word-board.ts';
import { blockOf, boxAt, oneLine, type WordBlock } from './word-block.ts';

/** Heights tried for words along edges, mm, largest first. */
const EDGE_HEIGHTS_MM = [3.5, 3, SMALLEST_WORDS_MM];

/** Places along an edge where its words are tried, in shares of its length, and steps inward from as near as they can stand, mm. */
const PLACES_ALONG = [0.5, 0.4, 0.6, 0.3, 0.7, 0.22, 0.78, 0.15, 0.85];
const STEPS_IN_MM = [0, 0.6, 1.2, 2, 3, 4.5, 6, 8, 10, 13, 16];

/** Words of an edge may stand this much nearer to another one, mm. */
const OTHER_EDGE_MM = 2;

/**
 * Mate letter, mate's number and bevel beside an edge; in one line where there is room, else in two, else the letter inside and the rest on a leader.
 * @param turned what the edge meets where the template is turned over; left out where it is not.
 */
export function nameEdge(
  board: WordBoard,
  paper: PaperPiece,
  edge: PieceEdge,
  seam: FoamSeam,
  words: WordContext,
  turned?: string,
): void {
  const { say = inEnglish } = words;
  const named = edgeWords(paper.piece, edge, { seam, number: mateNumber(edge, seam, words), turned });
  const [letter, cut] = [say(named.mate), say(named.cut)];
  const line = walkedLine(edgeLine(paper, edge, 'traced'));
  const whole = cut === '' ? letter : `${letter} · ${cut}`;
  if (writeAlong(board, paper, line, (h) => oneLine(whole, h))) return;
  if (
    cut !== '' &&
    writeAlong(board, paper, line, (h) => blockOf([letter, cut].map((text) => ({ text, heightMm: h }))))
  )
    return;
  const isNamed = cut !== '' && writeAlong(board, paper, line, (h) => oneLine(letter, h));
  board.writeBeside(oneLine(isNamed ? `${edge.letter}: ${cut}` : whole, SMALLEST_WORDS_MM), anchorsAlong(paper, line));
}

/** Number of the piece an edge meets. */
export function mateNumber({ side }: PieceEdge, { pieces }: FoamSeam, words: WordContext): number | undefined {
  return pieces.length === 2 ? words.numberOf(pieces[1 - side]) : undefined;
}

/** Anchors on an edge, its middle first. */
function anchorsAlong(paper: PaperPiece, line: WalkedLine): readonly Anchor[] {
  const length = lengthOf(line);
  return [0.5, 0.3, 0.7].map((share) => {
    const right = chordAt(line, share * length, Math.min(length, 2))?.right ?? { x: 0, y: -paper.flip };
    return { target: pointAlong(line, share * length), outward: { x: paper.flip * right.x, y: paper.flip * right.y } };
  });
}

/** Writes a block along the inner side of an edge, as large and as near the middle as there is room. */
function writeAlong(
  board: WordBoard,
  paper: PaperPiece,
  line: WalkedLine,
  blockAt: (heightMm: number) => WordBlock,
): boolean {
  const length = lengthOf(line);
  for (const height of EDGE_HEIGHTS_MM) {
    const block = blockAt(height);
    for (const step of STEPS_IN_MM) {
      for (const share of PLACES_ALONG) {
        const chord = chordAt(line, share * length, Math.min(block.widthMm, length));
        if (chord === null) continue;
        // Outward is to the right of the way, and to the left where the paper is mirrored.
        const inward = { x: -paper.flip * chord.right.x, y: -paper.flip * chord.right.y };
        const away = block.heightMm / 2 + CLEARANCE_MM + 0.1 + step;
        const centre = { x: chord.middle.x + away * inward.x, y: chord.middle.y + away * inward.y };
        // Words belong to the edge they stand nearest to: no other may be much nearer.
        if (
          board.tryInside(
            block,
            boxAt(block, centre.x, centre.y, readableAngle(chord.along)),
            Math.max(0, away - OTHER_EDGE_MM),
          )
        )
          return true;
      }
    }
  }
  return false;
}
