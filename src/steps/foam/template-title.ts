import type { Say } from '../../base/paper-language.ts';
import { tightBox } from '../../geom/convex-hull.ts';
import type { Vec2 } from '../../geom/vec.ts';
import { widestSpot } from '../../geom/widest-spot.ts';
import { SMALLEST_WORDS_MM } from '../../model/line-style.ts';
import { readableAngle } from './edge-places.ts';
import type { PaperPiece } from './template-lines.ts';
import type { Title } from './template-words.ts';
import type { Anchor, WordBoard } from './word-board.ts';
import { blockOf, type WordBlock } from './word-block.ts';

/** Heights tried for the title, mm, largest first. */
const TITLE_HEIGHTS_MM = [5, 4.5, 4, 3.5, 3, SMALLEST_WORDS_MM];

/** The first line of the title stands this many times higher than the rest. */
const TITLE_LEAD = 1.5;

/** How near the widest spot of a piece is found, mm: it only says where to look first. */
const SPOT_PRECISION_MM = 0.5;

/**
 * What the piece is, in the largest letters that fit inside: as one block of lines, level, along the piece or upright, narrower or wider
 * before smaller letters are taken; the name is broken only after that. Where it does not fit whole: name and quantity by themselves, and what is left in another place inside or
 * else beside the piece; then the number alone inside and all the rest beside it.
 */
export function writeTitle(board: WordBoard, paper: Lines, { number, head, rest }: Title): void {
  const field = fieldOf(paper);
  const lines = [...head, ...rest];
  if (writeInside(board, field, layoutsOf(lines), TITLE_HEIGHTS_MM, true)) return;
  if (writeInside(board, field, [lines.flatMap(halves)], TITLE_HEIGHTS_MM, true)) return;
  if (writeInside(board, field, layoutsOf(head), SPLIT_HEIGHTS_MM, true)) {
    if (writeInside(board, field, layoutsOf(rest), [SMALLEST_WORDS_MM], false)) return;
    board.writeBeside(
      titleBlock([`${number}: ${rest[0]}`, ...rest.slice(1)], SMALLEST_WORDS_MM, false),
      anchorsRound(paper),
    );
    return;
  }
  writeInside(board, field, [[number]], SPLIT_HEIGHTS_MM, true);
  board.writeBeside(titleBlock(lines, SMALLEST_WORDS_MM, true), anchorsRound(paper));
}

/** The same in the language of the paper. */
export const saidTitle = ({ number, head, rest }: Title, say: Say): Title => ({
  number: say(number),
  head: head.map(say),
  rest: rest.map(say),
});

/** Lines that are good to have: in the smallest letters where the piece has room for all of them, else left out. */
export function writeIfRoom(board: WordBoard, paper: Lines, lines: readonly string[]): void {
  if (lines.length > 0) writeInside(board, fieldOf(paper), [lines], [SMALLEST_WORDS_MM], false);
}

/** Heights for a title that is told in two places, mm: no larger, so that it still reads as one. */
const SPLIT_HEIGHTS_MM = [4, 3.5, 3, SMALLEST_WORDS_MM];

/** What is cut, the outer ring first. */
type Lines = Pick<PaperPiece, 'cutRings'>;

/** Where in a piece words are wanted, and which way they may run. */
interface Field {
  readonly spot: Vec2;
  readonly angles: readonly number[];
}

/** The widest spot; level, along the piece and upright. */
function fieldOf(paper: Lines): Field {
  const along = readableAngle(tightBox(paper.cutRings[0]));
  const angles = [0, along, Math.PI / 2].filter(
    (angle, i, all) => all.findIndex((other) => Math.abs(other - angle) < SAME_ANGLE_RAD) === i,
  );
  return { spot: widestSpot(paper.cutRings, SPOT_PRECISION_MM), angles };
}

/** Directions that differ by less than this look alike, radians. */
const SAME_ANGLE_RAD = 0.02;

function writeInside(
  board: WordBoard,
  { spot, angles }: Field,
  layouts: readonly (readonly string[])[],
  heights: readonly number[],
  hasLead: boolean,
): boolean {
  const rooms = angles.map((angle) => board.room(angle));
  for (const height of heights) {
    for (const layout of layouts) {
      const block = titleBlock(layout, height, hasLead);
      for (const room of rooms) {
        const place = room.find(block.widthMm, block.heightMm, spot);
        if (place !== null && board.tryInside(block, place)) return true;
      }
    }
  }
  return false;
}

function titleBlock(lines: readonly string[], heightMm: number, hasLead: boolean): WordBlock {
  return blockOf(
    lines.map((text, i) =>
      hasLead && i === 0 ? { text, heightMm: TITLE_LEAD * heightMm, bold: true } : { text, heightMm },
    ),
  );
}

/** The lines as they are, two by two for wide places, and for narrow ones broken at their middle, all but the first. */
function layoutsOf(lines: readonly string[]): readonly (readonly string[])[] {
  const wide: string[] = [];
  for (let i = 0; i < lines.length; i += 2) wide.push(lines.slice(i, i + 2).join(' · '));
  return [lines, wide, [lines[0], ...lines.slice(1).flatMap(halves)]];
}

/** A long line broken at the space nearest its middle. */
function halves(line: string): readonly string[] {
  if (line.length < 16) return [line];
  const spaces = [...line.matchAll(/ /g)].map(({ index }) => index);
  if (spaces.length === 0) return [line];
  const middle = line.length / 2;
  const at = spaces.reduce((best, i) => (Math.abs(i - middle) < Math.abs(best - middle) ? i : best));
  return [line.slice(0, at).replace(/ ·$/, ''), line.slice(at + 1).replace(/^· /, '')];
}

/** Places round the cut line that a leader may point at: its farthest corner in each of eight directions. */
function anchorsRound(paper: Lines): readonly Anchor[] {
  const ring = paper.cutRings[0];
  const count = ring.length / 2;
  const anchors: Anchor[] = [];
  for (let k = 0; k < 8; k += 1) {
    const way = { x: Math.cos((k * Math.PI) / 4), y: Math.sin((k * Math.PI) / 4) };
    let best = 0;
    for (let i = 1; i < count; i += 1) {
      if (ring[2 * i] * way.x + ring[2 * i + 1] * way.y > ring[2 * best] * way.x + ring[2 * best + 1] * way.y) best = i;
    }
    anchors.push({ target: { x: ring[2 * best], y: ring[2 * best + 1] }, outward: way });
  }
  return anchors;
}
