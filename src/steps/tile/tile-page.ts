import type { PieceId } from '../../base/ids.ts';
import type { Say } from '../../base/paper-language.ts';
import { lineInBox, polygonInBox } from '../../geom/clip-to-box.ts';
import type { Box2 } from '../../geom/ring.ts';
import { textWidthMm } from '../../geom/text-width.ts';
import type { CutThing } from '../../model/foam-strip.ts';
import type { Page } from '../../model/page.ts';
import type { Stroke, Words } from '../../model/template.ts';
import { moveDrawing, type Block } from './block.ts';
import { neighbourOf, placeName, tileBox, type Side } from './lattice.ts';
import { Obstacles } from './obstacles.ts';
import { drawUprightRule } from './check-rules.ts';
import { drawFoot, listThatFits } from './page-foot.ts';
import { FOOT_MM, type PaperFrame } from './paper-frame.ts';
import { Pen, TYPE_MM } from './pen.ts';
import { drawTileMarks, labelJoints, neighboursOf } from './tile-marks.ts';
import { isBoxInside, turnedWordsBox, wordsBox } from './words-box.ts';

/** What a tile's frame says besides its own name. */
export interface TileWords {
  readonly title: string;
  readonly pageNumber: number;
  readonly pageCount: number;
  readonly say: Say;
  readonly pieces: ReadonlyMap<PieceId, CutThing>;
  /** Page name of a tile of this block. */
  readonly nameOfTile: (tile: number) => string;
}

/** Page name of a tile: `A1` where there is one block, `2-B3` where there are more. */
export function tileName(block: Block, number: number, blockCount: number, tile: number): string {
  const place = placeName(block.lattice, tile);
  return blockCount === 1 ? place : `${number}-${place}`;
}

/** What of a block's templates one printed tile shows, page space. */
export interface TileContent {
  readonly tile: number;
  readonly strokes: readonly Stroke[];
  readonly words: readonly Words[];
  readonly pieces: readonly ShownPiece[];
}

/** A piece that is cut with something on a page, and whether it is cut with that turned over. */
export interface ShownPiece {
  readonly piece: PieceId;
  readonly isTurned: boolean;
}

/**
 * Cuts a block to one of its tiles. A line of words is shown where it is whole, never in part.
 * @param block its words settled, see `settleLabels`.
 */
export function tileContent(block: Block, tile: number, frame: PaperFrame): TileContent {
  const { lattice } = block;
  const box = tileBox(lattice, tile);
  const x = frame.marginMm - (tile % lattice.columns) * lattice.stepXMm;
  const y = frame.marginMm + FOOT_MM - Math.floor(tile / lattice.columns) * lattice.stepYMm;
  const shown = block.templates.map(({ piece, turned, drawing }) => {
    const strokes = drawing.strokes.flatMap((stroke) => clipStroke(stroke, box));
    const words = drawing.words.filter((line) => isBoxInside(wordsBox(line), box));
    const twin = turned === undefined ? [] : [{ piece: turned, isTurned: true }];
    return {
      pieces: [{ piece, isTurned: false }, ...twin],
      drawing: moveDrawing({ strokes, words }, { x, y, turnRad: 0 }),
    };
  });
  return {
    tile,
    strokes: shown.flatMap(({ drawing }) => drawing.strokes),
    words: shown.flatMap(({ drawing }) => drawing.words),
    pieces: shown
      .filter(({ drawing }) => drawing.strokes.length + drawing.words.length > 0)
      .flatMap(({ pieces }) => pieces),
  };
}

/** The page of one tile: what it shows, the marks by which it is joined, and its foot. */
export function tilePage(block: Block, content: TileContent, frame: PaperFrame, said: TileWords): Page {
  const { lattice, isPrinted } = block;
  const { say } = said;
  const beside = neighboursOf(lattice, isPrinted, content.tile);
  const pen = new Pen();
  drawTileMarks(pen, frame, lattice, content.tile, beside);
  drawUprightRule(pen, frame, lattice.tileHeightMm, { words: content.words, say });
  const obstacles = new Obstacles();
  obstacles.addStrokes(content.strokes);
  obstacles.addStrokes(pen.strokes);
  for (const line of content.words) obstacles.addBox(turnedWordsBox(line));
  const nameOf = (side: Side): string => said.nameOfTile(neighbourOf(lattice, content.tile, side));
  const unsaid = labelJoints(pen, frame, lattice, { beside, nameOf, obstacles, say }).map(
    (side) => `${say(side)} ${nameOf(side)}`,
  );
  const name = said.nameOfTile(content.tile);
  drawFoot(pen, frame, {
    pageName: name,
    pageNumber: said.pageNumber,
    pageCount: said.pageCount,
    title: said.title,
    below: footText(content.pieces, said, unsaid, frame.tileWidthMm - FOOT_NAME_MM),
    ruledHeightMm: lattice.tileHeightMm,
    say,
  });
  return {
    kind: 'tile',
    name,
    widthMm: frame.widthMm,
    heightMm: frame.roll ? 2 * frame.marginMm + FOOT_MM + lattice.tileHeightMm : frame.heightMm,
    drawing: { strokes: [...pen.strokes, ...content.strokes], words: [...content.words, ...pen.words] },
    pieces: content.pieces.map(({ piece }) => piece),
  };
}

/** Room kept for the page's name at the end of the foot, mm: `10-AA10` at its size. */
const FOOT_NAME_MM = 42;

function footText(
  shown: readonly ShownPiece[],
  { pieces, say }: Pick<TileWords, 'pieces' | 'say'>,
  unsaid: readonly string[],
  widthMm: number,
): string {
  const parts = shown.map(({ piece: id, isTurned }) => {
    const piece = pieces.get(id);
    return piece === undefined ? String(id) : say(`${piece.number}${isTurned ? ' turned' : ''} rev ${piece.revision}`);
  });
  const joints = unsaid.length === 0 ? '' : `${unsaid.join(', ')} · `;
  const head = `${joints}${say(parts.length === 1 ? 'Piece' : 'Pieces')} `;
  return (
    head +
    listThatFits(parts, TYPE_MM.body, widthMm - textWidthMm(head, TYPE_MM.body), (count) =>
      say(`and ${count} more, see the map`),
    )
  );
}

function clipStroke(stroke: Stroke, box: Box2): readonly Stroke[] {
  if (stroke.filled === true) {
    const points = polygonInBox(stroke.points, box);
    return points.length < 6 ? [] : [{ ...stroke, points }];
  }
  return lineInBox(stroke.points, stroke.closed, box).map((run) => ({
    ...stroke,
    points: run.points,
    closed: run.closed,
  }));
}
