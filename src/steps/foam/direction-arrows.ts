import type { Say } from '../../base/paper-language.ts';
import { boxOfPoints } from '../../geom/ring.ts';
import type { TurnedBox } from '../../geom/turned-box.ts';
import type { Vec2 } from '../../geom/vec.ts';
import { SMALLEST_WORDS_MM } from '../../model/line-style.ts';
import { readableAngle } from './edge-places.ts';
import type { Stroke } from '../../model/template.ts';
import { foamBoxOf, type PaperPiece } from './template-lines.ts';
import { CLEARANCE_MM, type WordBoard } from './word-board.ts';
import { boxAt, oneLine, type WordBlock } from './word-block.ts';

/** Lengths tried for the up arrow, mm, for the grain arrow, which stands for a whole sheet, and their heads. */
const UP_MM = [16, 12, 9];
const GRAIN_MM = [40, 30, 22, 16, 13];
const ARROW_HEAD_MM = 2.6;

/** An arrow with the word beside it, inside where it fits, else beside the piece; nothing on a piece that lies level. */
export function drawUp(board: WordBoard, paper: PaperPiece, say: Say): void {
  const { up } = paper;
  if (up === null) return;
  // In the lower left, so that the middle is left to the title.
  const { minX, minY } = boxOfPoints(paper.cutRings[0]);
  const { x, y, size } = findPlace(board, paper, upSizes(say), upAngle(up), { x: minX, y: minY });
  putArrow(board, upArrowAt({ x, y }, up, size, say));
}

export const upAngle = (up: Vec2): number => Math.atan2(-up.x, up.y);

/** An arrow and its word. */
export interface NamedArrow {
  readonly strokes: readonly Stroke[];
  readonly word: WordBlock;
  readonly box: TurnedBox;
}

const upWord = (say: Say): WordBlock => oneLine(say('up'), SMALLEST_WORDS_MM);

/** Room the up arrow takes with its word, the largest first. */
export const upSizes = (say: Say): readonly WordBlock[] =>
  UP_MM.map((heightMm) => ({
    lines: [],
    widthMm: ARROW_HEAD_MM + CLEARANCE_MM + upWord(say).widthMm,
    heightMm,
  }));

/** The up arrow in a place of one of its sizes, turned by {@link upAngle}. */
export function upArrowAt(centre: Vec2, up: Vec2, { widthMm, heightMm }: WordBlock, say: Say): NamedArrow {
  const word = upWord(say);
  const aside = -widthMm / 2 + ARROW_HEAD_MM / 2;
  const away = widthMm / 2 - word.widthMm / 2;
  return {
    strokes: arrowStrokes({ centre, way: up, aside, lengthMm: heightMm, heads: 1 }),
    word,
    box: boxAt(word, centre.x + away * up.y, centre.y - away * up.x, upAngle(up)),
  };
}

function putArrow(board: WordBoard, { strokes, word, box }: NamedArrow): void {
  for (const stroke of strokes) board.draw(stroke);
  board.write(word, box);
}

/** An arrow with two heads along the sheet's length, its word over it, inside where it fits, else beside the piece. */
export function drawGrain(board: WordBoard, paper: PaperPiece, say: Say): void {
  const { grain } = paper;
  if (grain === null) return;
  const { maxX, minY } = boxOfPoints(paper.cutRings[0]);
  const { x, y, size } = findPlace(board, paper, grainSizes(say), readableAngle(grain), { x: maxX, y: minY });
  putArrow(board, grainArrowAt({ x, y }, grain, size, say));
}

const grainWord = (say: Say): WordBlock => oneLine(say('grain'), SMALLEST_WORDS_MM);

/** Room the grain arrow takes with its word, the largest first. */
export const grainSizes = (say: Say): readonly WordBlock[] =>
  GRAIN_MM.map((widthMm) => ({
    lines: [],
    widthMm: Math.max(widthMm, grainWord(say).widthMm),
    heightMm: ARROW_HEAD_MM + CLEARANCE_MM + grainWord(say).heightMm,
  }));

/** The grain arrow in a place of one of its sizes, turned so that its word is read. */
export function grainArrowAt(centre: Vec2, grain: Vec2, { widthMm, heightMm }: WordBlock, say: Say): NamedArrow {
  const word = grainWord(say);
  const angle = readableAngle(grain);
  const way = { x: Math.cos(angle), y: Math.sin(angle) };
  const over = heightMm / 2 - word.heightMm / 2;
  return {
    strokes: arrowStrokes({ centre, way, aside: heightMm / 2 - ARROW_HEAD_MM / 2, lengthMm: widthMm, heads: 2 }),
    word,
    box: boxAt(word, centre.x - over * way.y, centre.y + over * way.x, angle),
  };
}

/** Where the first of some sizes fits inside the piece near a place, else where the last one fits beside it. */
function findPlace(
  board: WordBoard,
  paper: PaperPiece,
  sizes: readonly WordBlock[],
  angle: number,
  near: Vec2,
): Vec2 & { readonly size: WordBlock } {
  const room = board.room(angle);
  for (const size of sizes) {
    const box = room.find(size.widthMm + 2 * CLEARANCE_MM, size.heightMm + 2 * CLEARANCE_MM, near);
    if (box !== null) return { x: box.x, y: box.y, size };
  }
  const size = sizes[sizes.length - 1];
  return { ...besidePiece(board, paper, size, angle), size };
}

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

/** A straight arrow: its middle stands `aside` mm to the right of `centre`, seen along its way. */
interface Arrow {
  readonly centre: Vec2;
  /** Length 1. */
  readonly way: Vec2;
  readonly aside: number;
  readonly lengthMm: number;
  readonly heads: 1 | 2;
}

function arrowStrokes({ centre, way, aside, lengthMm, heads }: Arrow): readonly Stroke[] {
  const at = (along: number, off: number): [number, number] => [
    centre.x + along * way.x + (aside + off) * way.y,
    centre.y + along * way.y - (aside + off) * way.x,
  ];
  const [tip, head] = [lengthMm / 2, lengthMm / 2 - ARROW_HEAD_MM];
  const shaft: Stroke = {
    role: 'mark',
    points: Float64Array.of(...at(heads === 2 ? -head : -tip, 0), ...at(head, 0)),
    closed: false,
  };
  const ends = heads === 2 ? [1, -1] : [1];
  return [
    shaft,
    ...ends.map((end): Stroke => ({
      role: 'mark',
      points: Float64Array.of(
        ...at(end * tip, 0),
        ...at(end * head, (-end * ARROW_HEAD_MM) / 2),
        ...at(end * head, (end * ARROW_HEAD_MM) / 2),
      ),
      closed: true,
      filled: true,
    })),
  ];
}
