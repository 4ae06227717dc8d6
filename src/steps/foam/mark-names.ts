import type { Vec2 } from '../../geom/vec.ts';
import type { PieceEdge } from '../../model/foam-piece.ts';
import { SMALLEST_WORDS_MM } from '../../model/line-style.ts';
import type { Stroke } from '../../model/template.ts';
import { chordAt, walkedLine } from './edge-places.ts';
import { edgeLine, TICK_MM, type PaperPiece } from './template-lines.ts';
import { BEVEL_STEP_DEG, leanOnPaper, leanText } from './template-words.ts';
import { CLEARANCE_MM, type WordBoard } from './word-board.ts';
import { boxAt, oneLine } from './word-block.ts';

/** Letter and number at each tick: inside the piece behind it, else at the tick's outer end, else on a leader. */
export function nameMarks(board: WordBoard, { marks }: PaperPiece): void {
  for (const { letter, index, at, outward: out } of marks) {
    const block = oneLine(`${letter}${index}`, SMALLEST_WORDS_MM);
    const reach = (Math.abs(out.x) * block.widthMm + Math.abs(out.y) * block.heightMm) / 2 + CLEARANCE_MM + 0.1;
    const isIn = [0, 1, 2, 3.5, 5.5, 8].some((step) =>
      [0, 2, -2, 4, -4].some((aside) =>
        board.tryInside(
          block,
          boxAt(block, at.x - (reach + step) * out.x - aside * out.y, at.y - (reach + step) * out.y + aside * out.x, 0),
        ),
      ),
    );
    if (isIn) continue;
    const tip = TICK_MM + reach;
    const isOut = [0, 0.8, 1.6].some((step) =>
      board.tryOutside(block, boxAt(block, at.x + (tip + step) * out.x, at.y + (tip + step) * out.y, 0)),
    );
    if (!isOut)
      board.writeBeside(block, [{ target: { x: at.x + TICK_MM * out.x, y: at.y + TICK_MM * out.y }, outward: out }]);
  }
}

/** A place where the bevel has changed by another step. */
export interface BevelStep {
  /** On the line to cut, and straight across on the other edge. */
  readonly at: Vec2;
  readonly end: Vec2;
  readonly outward: Vec2;
  /** Lean there as the printed side shows it, degrees. */
  readonly leanDeg: number;
}

/** Places told along an edge stand at least this far apart, mm: no blade is set anew more often [J]. */
const LEAST_STEP_MM = 15;

/**
 * The places along an edge where the bevel has changed by another five degrees (foam model 4). Its first and last lean are in the edge's own
 * words.
 */
export function bevelSteps(paper: PaperPiece, edge: PieceEdge): readonly BevelStep[] {
  const traced = edgeLine(paper, edge, 'traced');
  const other = edgeLine(paper, edge, 'other');
  const line = walkedLine(traced);
  const leans = Array.from(edge.bevelDeg, (lean) => leanOnPaper(paper.piece, lean));
  const steps: BevelStep[] = [];
  let [told, toldAt] = [leans[0], 0];
  for (let j = 1; j + 1 < leans.length; j += 1) {
    const right = chordAt(line, line.stations[j], 2)?.right;
    if (Math.abs(leans[j] - told) < BEVEL_STEP_DEG || line.stations[j] - toldAt < LEAST_STEP_MM || right === undefined)
      continue;
    [told, toldAt] = [leans[j], line.stations[j]];
    steps.push({
      at: { x: traced[2 * j], y: traced[2 * j + 1] },
      end: { x: other[2 * j], y: other[2 * j + 1] },
      outward: { x: paper.flip * right.x, y: paper.flip * right.y },
      leanDeg: told,
    });
  }
  return steps;
}

/** A thin line across the bevel at each step. */
export const bevelStepStroke = ({ at, end }: BevelStep): Stroke => ({
  role: 'bevel',
  points: Float64Array.of(at.x, at.y, end.x, end.y),
  closed: false,
});

/** The lean at each step, inside the piece behind its line, else on a leader. */
export function tellBevelSteps(board: WordBoard, steps: readonly BevelStep[]): void {
  for (const { at, end, outward, leanDeg } of steps) {
    const block = oneLine(leanText(leanDeg).replace(' under', ''), SMALLEST_WORDS_MM);
    const reach = (Math.abs(outward.x) * block.widthMm + Math.abs(outward.y) * block.heightMm) / 2 + CLEARANCE_MM + 0.1;
    const depth = Math.max(0, (at.x - end.x) * outward.x + (at.y - end.y) * outward.y);
    const isIn = [0, 1, 2, 4, 6].some((step) => {
      const away = reach + depth + step;
      return board.tryInside(block, boxAt(block, at.x - away * outward.x, at.y - away * outward.y, 0));
    });
    if (!isIn) board.writeBeside(block, [{ target: at, outward }]);
  }
}
