import type { PieceId } from '../../base/ids.ts';
import { boxOfPoints, type Box2 } from '../../geom/ring.ts';
import { textWidthMm } from '../../geom/text-width.ts';
import type { FoamPiece } from '../../model/foam-piece.ts';
import { LEADING, TYPE_MM, type Pen } from './pen.ts';
import type { Block } from './block.ts';
import type { Flow, FlowItem } from './flow.ts';
import { placeName, tileBox } from './lattice.ts';
import { doBoxesOverlap, growBox, wordsBox } from './words-box.ts';

/** Largest scale of a picture, and the share of the page's height that all of them should keep to [J]. */
const LARGEST_SCALE = 0.25;
const SHARE_OF_PAGE = 0.45;

/** Between two pictures, mm. */
const GAP_MM = 6;

/** Points of an outline nearer than this on paper are one, mm. */
const FINEST_MM = 0.12;

interface Picture {
  readonly number: number;
  readonly block: Block;
  readonly width: number;
  readonly height: number;
}

/**
 * Small pictures of all blocks at one scale, each with its tiles and their names and its pieces by number.
 * @param heightMm room on a page, mm.
 */
export function putPictures(
  flow: Flow,
  blocks: readonly Block[],
  pieces: ReadonlyMap<PieceId, FoamPiece>,
  heightMm: number,
): void {
  const scale = scaleFor(blocks, flow.width, heightMm);
  for (const row of rowsOf(blocks, scale, flow.width)) {
    const high = Math.max(...row.map((picture) => picture.height));
    const item: FlowItem = {
      heightMm: high + TYPE_MM.body * LEADING,
      gapMm: 4,
      draw: (pen, left, top) => {
        let x = left;
        for (const picture of row) {
          drawPicture(pen, picture, x, top - high, scale, blocks.length, pieces);
          x += picture.width + GAP_MM;
        }
      },
    };
    flow.put(item);
  }
}

/** The largest scale, in steps of a tenth, at which all pictures keep to their share of the page. */
function scaleFor(blocks: readonly Block[], width: number, heightMm: number): number {
  const widest = Math.max(...blocks.map((block) => blockSize(block).width));
  const highest = Math.max(...blocks.map((block) => blockSize(block).height));
  let scale = Math.min(LARGEST_SCALE, width / widest, (SHARE_OF_PAGE * heightMm) / highest);
  for (let tries = 0; tries < 12; tries += 1) {
    const rows = rowsOf(blocks, scale, width);
    const total = rows.reduce(
      (sum, row) => sum + Math.max(...row.map((picture) => picture.height)) + GAP_MM + TYPE_MM.body,
      0,
    );
    if (total <= SHARE_OF_PAGE * heightMm || scale < 0.08) break;
    scale *= 0.9;
  }
  return scale;
}

function rowsOf(blocks: readonly Block[], scale: number, width: number): readonly (readonly Picture[])[] {
  const rows: Picture[][] = [[]];
  let filled = 0;
  for (const [i, block] of blocks.entries()) {
    const size = blockSize(block);
    const caption = textWidthMm(captionOf(block, i + 1, blocks.length), TYPE_MM.body);
    const picture = { number: i + 1, block, width: Math.max(size.width * scale, caption), height: size.height * scale };
    if (filled > 0 && filled + picture.width > width + 1e-9) {
      rows.push([]);
      filled = 0;
    }
    rows[rows.length - 1].push(picture);
    filled += picture.width + GAP_MM;
  }
  return rows;
}

function blockSize({ lattice }: Block): { width: number; height: number } {
  return {
    width: (lattice.columns - 1) * lattice.stepXMm + lattice.tileWidthMm,
    height: (lattice.rows - 1) * lattice.stepYMm + lattice.tileHeightMm,
  };
}

function captionOf(block: Block, number: number, blockCount: number): string {
  const printed = block.isPrinted.filter(Boolean).length;
  const name = blockCount === 1 ? '' : `${number}`;
  if (block.isPrinted.length === 1) return blockCount === 1 ? 'A1' : `${number}-A1`;
  return `${name === '' ? '' : `${name}: `}${printed} pages`;
}

function drawPicture(
  pen: Pen,
  picture: Picture,
  left: number,
  bottom: number,
  scale: number,
  blockCount: number,
  pieces: ReadonlyMap<PieceId, FoamPiece>,
): void {
  const { block, number } = picture;
  const { lattice } = block;
  const onPage = (box: Box2): Box2 => ({
    minX: left + box.minX * scale,
    minY: bottom + box.minY * scale,
    maxX: left + box.maxX * scale,
    maxY: bottom + box.maxY * scale,
  });
  const written: Box2[] = [];
  const write = (text: string, x: number, y: number, align: 'left' | 'centre', bold: boolean): void => {
    const words = { text, at: { x, y }, angleRad: 0, heightMm: TYPE_MM.body, align };
    const box = wordsBox(words);
    if (written.some((other) => doBoxesOverlap(growBox(box, 0.3), other))) return;
    written.push(box);
    pen.write(text, words.at, { align, bold });
  };
  for (const [tile, isPrinted] of block.isPrinted.entries()) {
    if (!isPrinted) continue;
    const box = onPage(tileBox(lattice, tile));
    pen.rectangle('frame', box.minX, box.minY, box.maxX - box.minX, box.maxY - box.minY);
  }
  for (const template of block.templates) {
    const cuts = template.drawing.strokes.filter((stroke) => stroke.role === 'cut');
    for (const { points, closed } of cuts) {
      const small = thinned(points, scale).map((value, i) => (i % 2 === 0 ? left : bottom) + value * scale);
      pen.strokes.push({ role: 'map', points: small, closed });
    }
  }
  for (const template of block.templates) {
    const cuts = template.drawing.strokes.filter((stroke) => stroke.role === 'cut');
    const box = onPage(boxOfPoints(cuts.flatMap(({ points }) => Array.from(points))));
    const label = String(pieces.get(template.piece)?.number ?? template.piece);
    write(label, (box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2 - TYPE_MM.body / 2, 'centre', true);
  }
  if (block.isPrinted.length > 1) {
    for (const [tile, isPrinted] of block.isPrinted.entries()) {
      const box = onPage(tileBox(lattice, tile));
      const name = placeName(lattice, tile);
      if (isPrinted && textWidthMm(name, TYPE_MM.body) < lattice.stepXMm * scale - 2)
        write(name, box.minX + 1.2, box.minY + 1.4, 'left', false);
    }
  }
  pen.write(captionOf(block, number, blockCount), { x: left, y: bottom - TYPE_MM.body - 1.2 });
}

/** The outline with fewer points: what lies nearer than can be seen at this scale is left out. */
function thinned(points: Float64Array, scale: number): Float64Array {
  const kept: number[] = [];
  for (let i = 0; i + 1 < points.length; i += 2) {
    const far = Math.hypot(points[i] - (kept.at(-2) ?? Infinity), points[i + 1] - (kept.at(-1) ?? Infinity)) * scale;
    if (i === 0 || far >= FINEST_MM) kept.push(points[i], points[i + 1]);
  }
  return Float64Array.from(kept);
}
