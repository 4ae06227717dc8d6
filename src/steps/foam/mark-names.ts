import type { MatchMark } from '../../model/foam-piece.ts';
import { SMALLEST_WORDS_MM } from '../../model/line-style.ts';
import { TICK_MM, type PaperPiece } from './template-lines.ts';
import { bothNames, markKey, type TwinReading } from './twin-reading.ts';
import { CLEARANCE_MM, type WordBoard } from './word-board.ts';
import { boxAt, oneLine } from './word-block.ts';

/** `A1`, and `A2·1` where the letter ends in a number itself, as on an inner sheet of a wall. */
const markName = (letter: string, index: number): string =>
  /\d$/.test(letter) ? `${letter}·${index}` : `${letter}${index}`;

/** Its name, and another one on the template turned over. */
function namesOf(mark: MatchMark, twin: TwinReading | undefined): string {
  const other = twin?.marks.get(markKey(mark));
  return bothNames(markName(mark.letter, mark.index), other && markName(other.letter, other.index));
}

/** Letter and number at each tick: inside the piece behind it, else at the tick's outer end, else on a leader. */
export function nameMarks(board: WordBoard, { marks }: PaperPiece, twin?: TwinReading): void {
  for (const mark of marks) {
    const { at, outward: out } = mark;
    const block = oneLine(namesOf(mark, twin), SMALLEST_WORDS_MM);
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
