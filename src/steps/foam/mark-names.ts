import type { PieceEdge } from '../../model/foam-piece.ts';
import { SMALLEST_WORDS_MM } from '../../model/line-style.ts';
import { chordAt, walkedLine } from './edge-places.ts';
import { edgeLine, TICK_MM, type PaperPiece } from './template-lines.ts';
import { BEVEL_STEP_DEG, leanOnPaper, leanText } from './template-words.ts';
import { CLEARANCE_MM, type WordBoard } from './word-board.ts';
import { boxAt, oneLine } from './word-block.ts';

/** Letter and number at each tick: inside the piece behind it, else at the tick's outer end, else on a leader. */
export function nameMarks(board: WordBoard, { piece, flip }: PaperPiece): void {
  for (const mark of piece.marks) {
    const block = oneLine(`${mark.letter}${mark.index}`, SMALLEST_WORDS_MM);
    const at = { x: flip * mark.at.x, y: mark.at.y };
    const out = { x: flip * mark.outward.x, y: mark.outward.y };
    const reach = (Math.abs(out.x) * block.widthMm + Math.abs(out.y) * block.heightMm) / 2 + CLEARANCE_MM + 0.1;
    const isIn = [0, 1, 2, 3.5, 5.5, 8].some((step) =>
      [0, 2, -2, 4, -4].some((aside) =>
        board.tryInside(block, boxAt(block, at.x - (reach + step) * out.x - aside * out.y, at.y - (reach + step) * out.y + aside * out.x, 0)),
      ),
    );
    if (isIn) continue;
    const tip = TICK_MM + reach;
    const isOut = [0, 0.8, 1.6].some((step) =>
      board.tryOutside(block, boxAt(block, at.x + (tip + step) * out.x, at.y + (tip + step) * out.y, 0)),
    );
    if (!isOut) board.writeBeside(block, [{ target: { x: at.x + TICK_MM * out.x, y: at.y + TICK_MM * out.y }, outward: out }]);
  }
}

/**
 * Wherever the bevel has changed by another five degrees along an edge: a thin line from the cut line to the other edge, with the lean there
 * (foam model 4). The first and last lean are in the edge's own words.
 */
export function tellBevelSteps(board: WordBoard, paper: PaperPiece, edge: PieceEdge): void {
  const traced = edgeLine(paper, edge, 'traced');
  const other = edgeLine(paper, edge, 'other');
  const leans = Array.from(edge.bevelDeg, (lean) => leanOnPaper(paper.piece, lean));
  let told = leans[0];
  for (let j = 1; j + 1 < leans.length; j += 1) {
    if (Math.abs(leans[j] - told) < BEVEL_STEP_DEG) continue;
    told = leans[j];
    const at = { x: traced[2 * j], y: traced[2 * j + 1] };
    const end = { x: other[2 * j], y: other[2 * j + 1] };
    board.draw({ role: 'bevel', points: Float64Array.of(at.x, at.y, end.x, end.y), closed: false });
    const chord = chordAt(walkedLine(traced), walkedLine(traced).stations[j], 2);
    if (chord === null) continue;
    const out = { x: paper.flip * chord.right.x, y: paper.flip * chord.right.y };
    const block = oneLine(leanText(told).replace(' under', ''), SMALLEST_WORDS_MM);
    const reach = (Math.abs(out.x) * block.widthMm + Math.abs(out.y) * block.heightMm) / 2 + CLEARANCE_MM + 0.1;
    const depth = Math.max(0, (at.x - end.x) * out.x + (at.y - end.y) * out.y);
    const isIn = [0, 1, 2, 4, 6].some((step) =>
      board.tryInside(block, boxAt(block, at.x - (reach + depth + step) * out.x, at.y - (reach + depth + step) * out.y, 0)),
    );
    if (!isIn) board.writeBeside(block, [{ target: at, outward: out }]);
  }
}

