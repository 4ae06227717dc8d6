import { inEnglish, type Say } from '../../base/paper-language.ts';
import { tightBox } from '../../geom/convex-hull.ts';
import { boxOfPoints, type Ring } from '../../geom/ring.ts';
import { SegmentGrid } from '../../geom/segment-grid.ts';
import {
  doesSegmentMeetBox,
  doTurnedBoxesMeet,
  growTurnedBox,
  uprightBox,
  type TurnedBox,
} from '../../geom/turned-box.ts';
import type { Vec2 } from '../../geom/vec.ts';
import { widestSpot } from '../../geom/widest-spot.ts';
import { SMALLEST_WORDS_MM } from '../../model/line-style.ts';
import type { FoamDrawing, Stroke, Words } from '../../model/template.ts';
import { grainArrowAt, grainSizes, upAngle, upArrowAt, upSizes, type NamedArrow } from './direction-arrows.ts';
import { readableAngle } from './edge-places.ts';
import { FreeRoom } from './free-room.ts';
import { pieceStrokes, type PaperPiece } from './template-lines.ts';
import { CLEARANCE_MM } from './word-board.ts';
import { blockOf, boxAt, wordsInBox, type WordBlock } from './word-block.ts';

/** Heights tried for the number of a piece, mm, largest first: seen from where one stands at a bench [J]. */
const NUMBER_MM = [14, 12, 10, 8, 6.5, 5, 4, 3.5, 3, SMALLEST_WORDS_MM];

/** A number this high or higher has the name under it where both fit; a smaller one stands by itself, as large as fits, mm. */
const NAMED_MM = 5;

/** Height of a name, as a share of its number's, and at most, mm. */
const NAME_SHARE = 0.4;
const MOST_NAME_MM = 5;

/** How near the widest spot of a piece is found, mm. */
const SPOT_PRECISION_MM = 0.1;

/** Directions that differ by less than this look alike, radians. */
const SAME_ANGLE_RAD = 0.02;

/** What foam shows of a piece: see {@link FoamDrawing}. */
export const foamDrawing = (paper: PaperPiece, say: Say): FoamDrawing =>
  wordsOnFoam(paper.cutRings, pieceStrokes(paper, 'foam'), paper.piece, paper, say);

/**
 * Lines with the number of what they are of, as large as fits inside, its name where that fits too, and arrows where there is room left.
 * @param rings  what is cut, outside first.
 */
export function wordsOnFoam(
  rings: readonly Ring[],
  lines: readonly Stroke[],
  { number, name }: { readonly number: number; readonly name: string },
  { up, grain }: Pick<PaperPiece, 'up' | 'grain'> = { up: null, grain: null },
  say = inEnglish,
): FoamDrawing {
  const inside = new Inside(rings, lines);
  const isIn = writeTitle(inside, String(number), name);
  const { minX, minY, maxX } = boxOfPoints(rings[0]);
  if (up !== null) {
    const arrow = inside.room(upAngle(up)).find(upSizes(say), { x: minX, y: minY });
    if (arrow !== null) inside.put(upArrowAt(arrow.box, up, arrow.block, say));
  }
  if (grain !== null) {
    const arrow = inside.room(readableAngle(grain)).find(grainSizes(say), { x: maxX, y: minY });
    if (arrow !== null) inside.put(grainArrowAt(arrow.box, grain, arrow.block, say));
  }
  return {
    strokes: inside.strokes,
    words: inside.words,
    blocks: inside.blocks,
    ...(isIn ? {} : { beside: String(number) }),
  };
}

/** @returns false where not even the number has room. */
function writeTitle(inside: Inside, number: string, name: string): boolean {
  const { spot, angles } = inside;
  const rooms = angles.map((angle) => inside.room(angle));
  const firstOf = (blocks: readonly WordBlock[], among = rooms): boolean => {
    for (const block of blocks) {
      for (const room of among) {
        const found = room.find([block], spot);
        if (found === null) continue;
        inside.write(block, found.box);
        return true;
      }
    }
    return false;
  };
  const names = [[name], halves(name)];
  const both = NUMBER_MM.filter((heightMm) => heightMm >= NAMED_MM).flatMap((heightMm) =>
    names.map((lines) => {
      const nameMm = Math.max(SMALLEST_WORDS_MM, Math.min(MOST_NAME_MM, NAME_SHARE * heightMm));
      return blockOf([numberLine(number, heightMm), ...lines.map((text) => ({ text, heightMm: nameMm }))]);
    }),
  );
  if (firstOf(both)) return true;
  const alone = NUMBER_MM.map((heightMm) => blockOf([numberLine(withFoot(number), heightMm)]));
  // Upright only where it would else be small.
  const level = rooms.filter((_, i) => angles[i] < UPRIGHT_RAD);
  if (
    !firstOf(
      alone.filter(({ lines: [{ heightMm }] }) => heightMm >= NAMED_MM),
      level,
    ) &&
    !firstOf(alone)
  )
    return false;
  const left = angles.map((angle) => inside.room(angle));
  firstOf(
    names.map((lines) => blockOf(lines.map((text) => ({ text, heightMm: SMALLEST_WORDS_MM })))),
    left,
  );
  return true;
}

/** Numbers that read as others when they stand on their heads get a full stop at their foot. */
const withFoot = (number: string): string => (/^[01689]*[69][01689]*$/.test(number) ? `${number}.` : number);

/** Words that run steeper than this are read with the head on one side, radians. */
const UPRIGHT_RAD = 1.2;

const numberLine = (text: string, heightMm: number) => ({ text, heightMm, bold: true });

/** A name broken at the space nearest its middle. */
function halves(name: string): readonly string[] {
  const spaces = [...name.matchAll(/ /g)].map(({ index }) => index);
  if (spaces.length === 0) return [name];
  const middle = name.length / 2;
  const at = spaces.reduce((best, i) => (Math.abs(i - middle) < Math.abs(best - middle) ? i : best));
  return [name.slice(0, at), name.slice(at + 1)];
}

/** Room that was found, and what of the sizes asked for fits there. */
interface Found {
  readonly block: WordBlock;
  readonly box: TurnedBox;
}

interface Room {
  /** The first of some sizes that has room, as near a place as it has. */
  find(sizes: readonly WordBlock[], near: Vec2): Found | null;
}

/** The inside of what is cut, with what is drawn and written there. */
class Inside {
  readonly strokes: Stroke[];
  readonly words: Words[] = [];
  readonly blocks: number[] = [];
  readonly spot: Vec2;
  /** Level, along the piece and upright. */
  readonly angles: readonly number[];
  readonly #rings: readonly Ring[];
  readonly #lines = new SegmentGrid(8);
  readonly #taken: TurnedBox[] = [];

  constructor(rings: readonly Ring[], lines: readonly Stroke[]) {
    this.strokes = [...lines];
    this.#rings = rings;
    for (const { points, closed } of lines) this.#lines.addLine(points, closed);
    this.spot = widestSpot(rings, SPOT_PRECISION_MM);
    this.angles = [0, readableAngle(tightBox(rings[0])), Math.PI / 2].filter(
      (angle, i, all) => all.findIndex((other) => Math.abs(other - angle) < SAME_ANGLE_RAD) === i,
    );
  }

  /** Room as it is now, for boxes turned by an angle. */
  room(angleRad: number): Room {
    const { x, y } = this.spot;
    const free = new FreeRoom(this.#rings, this.#lines, this.#taken, angleRad, CLEARANCE_MM);
    return {
      find: (sizes, near) => {
        for (const block of sizes) {
          // Cells are coarse in a long strip: its widest spot is known better.
          for (const box of [free.find(block.widthMm, block.heightMm, near), boxAt(block, x, y, angleRad)])
            if (box !== null && this.#isFree(box)) return { block, box };
        }
        return null;
      },
    };
  }

  write(block: WordBlock, box: TurnedBox): void {
    this.words.push(...wordsInBox(block, box));
    this.blocks.push(block.lines.length);
    this.#taken.push(box);
  }

  put({ strokes, word, box }: NamedArrow): void {
    for (const stroke of strokes) {
      this.strokes.push(stroke);
      this.#lines.addLine(stroke.points, stroke.closed);
    }
    this.write(word, box);
  }

  #isFree(box: TurnedBox): boolean {
    const grown = growTurnedBox(box, CLEARANCE_MM);
    if (this.#taken.some((other) => doTurnedBoxesMeet(grown, other))) return false;
    return !this.#lines.some(uprightBox(grown), (ax, ay, bx, by) => doesSegmentMeetBox(ax, ay, bx, by, grown));
  }
}
