import { boxOfPoints } from '../../geom/ring.ts';
import type { Vec2 } from '../../geom/vec.ts';
import { SMALLEST_WORDS_MM } from '../../model/line-style.ts';
import { foamBoxOf, type PaperPiece } from './template-lines.ts';
import { CLEARANCE_MM, type WordBoard } from './word-board.ts';
import { boxAt, oneLine, type WordBlock } from './word-block.ts';

/** Lengths tried for the up arrow, mm, and its head. */
const ARROWS_MM = [16, 12, 9];
const ARROW_HEAD_MM = 2.6;

/** An arrow with the word, inside where it fits, else beside the piece; nothing on a piece that lies level. */
export function drawUp(board: WordBoard, paper: PaperPiece): void {
  const { piece, flip } = paper;
  if (piece.up === null) return;
  const up = { x: flip * piece.up.x, y: piece.up.y };
  const angle = Math.atan2(-up.x, up.y);
  const word = oneLine('up', SMALLEST_WORDS_MM);
  const room = board.room(angle);
  // In the lower left, so that the middle is left to the title.
  const corner = boxOfPoints(paper.cutRings[0]);
  const width = ARROW_HEAD_MM + CLEARANCE_MM + word.widthMm;
  for (const length of ARROWS_MM) {
    const box = room.find(width + 2 * CLEARANCE_MM, length + 2 * CLEARANCE_MM, { x: corner.minX, y: corner.minY });
    if (box === null) continue;
    drawArrow(board, word, box, up, length, width);
    return;
  }
  const length = ARROWS_MM[ARROWS_MM.length - 1];
  drawArrow(board, word, besidePiece(board, paper, blockSize(width, length), angle), up, length, width);
}

const blockSize = (width: number, length: number): WordBlock => ({ lines: [], widthMm: width, heightMm: length });

/** The free place nearest to the lower left of the piece, outside it: rounds of its box, each wider than the last. */
function besidePiece(board: WordBoard, paper: PaperPiece, size: WordBlock, angle: number): Vec2 {
  const { minX, minY, maxX, maxY } = foamBoxOf(paper);
  const reach = Math.hypot(size.widthMm, size.heightMm) / 2;
  for (let away = reach + 2; ; away += reach) {
    const round: Vec2[] = [];
    for (let k = 0; k <= ROUND_STEPS; k += 1) {
      const [x, y] = [minX + ((maxX - minX) * k) / ROUND_STEPS, minY + ((maxY - minY) * k) / ROUND_STEPS];
      round.push({ x: minX - away, y }, { x, y: minY - away }, { x: maxX + away, y }, { x, y: maxY + away });
    }
    round.sort((a, b) => Math.hypot(a.x - minX, a.y - minY) - Math.hypot(b.x - minX, b.y - minY));
    const free = round.find(({ x, y }) => board.isFree(boxAt(size, x, y, angle)));
    if (free !== undefined) return free;
  }
}

/** Places tried on each side of a piece's box. */
const ROUND_STEPS = 12;

function drawArrow(board: WordBoard, word: WordBlock, centre: Vec2, up: Vec2, length: number, width: number): void {
  const right = { x: up.y, y: -up.x };
  const at = (along: number, aside: number): [number, number] => [
    centre.x + along * up.x + aside * right.x,
    centre.y + along * up.y + aside * right.y,
  ];
  const shaft = -width / 2 + ARROW_HEAD_MM / 2;
  const head = length / 2 - ARROW_HEAD_MM;
  board.draw({ role: 'mark', points: Float64Array.of(...at(-length / 2, shaft), ...at(head, shaft)), closed: false });
  board.draw({
    role: 'mark',
    points: Float64Array.of(
      ...at(length / 2, shaft),
      ...at(head, shaft - ARROW_HEAD_MM / 2),
      ...at(head, shaft + ARROW_HEAD_MM / 2),
    ),
    closed: true,
    filled: true,
  });
  const [x, y] = at(0, width / 2 - word.widthMm / 2);
  board.write(word, boxAt(word, x, y, Math.atan2(-up.x, up.y)));
}
