import { segmentInBox } from '../../geom/clip-to-box.ts';
import type { Box2 } from '../../geom/ring.ts';
import { moveBoxTo, type Move2 } from '../../geom/turn-and-move.ts';
import type { Drawing, Template } from '../../model/template.ts';
import { placeTemplate, sizeOf, type Block } from './block.ts';
import { neighbourOf, SIDES, tileBox, tilesAlong, tilesTouched, type Lattice, type Side } from './lattice.ts';
import type { PaperFrame } from './paper-frame.ts';
import { visibleCell } from './visible-cell.ts';
import { isBoxInside, moveBox, wordsBox } from './words-box.ts';

/** Places tried along each direction: the middle of the slack first, then towards both ends. */
const SHIFTS = [0.5, 0.25, 0.75, 0, 1];

/**
 * Parts one large template into tiles, upright or turned by a quarter, shifted within its slack so that the fewest pages carry a line;
 * among equals the fewest words are cut, then the template stays upright and in the middle.
 * @param box round everything drawn, template space.
 */
export function tileTemplate(template: Template, box: Box2, frame: PaperFrame): Block {
  let best: { score: readonly number[]; move: Move2; lattice: Lattice; isPrinted: readonly boolean[] } | null = null;
  for (const isTurned of [false, true]) {
    const base = placeTemplate(template, moveBoxTo(box, isTurned, 0, 0));
    const size = isTurned ? { width: sizeOf(box).height, height: sizeOf(box).width } : sizeOf(box);
    const lattice = latticeFor(size.width, size.height, frame);
    const slackX = (lattice.columns - 1) * lattice.stepXMm + lattice.tileWidthMm - size.width;
    const slackY = (lattice.rows - 1) * lattice.stepYMm + lattice.tileHeightMm - size.height;
    for (const [ix, shareX] of SHIFTS.entries()) {
      for (const [iy, shareY] of SHIFTS.entries()) {
        const x = shareX * slackX;
        const y = shareY * slackY;
        const { isPrinted, cutWords } = printedTiles(base.drawing, x, y, lattice);
        const score = [isPrinted.filter(Boolean).length, cutWords, Number(isTurned), ix + iy];
        if (best === null || isLess(score, best.score))
          best = { score, move: moveBoxTo(box, isTurned, x, y), lattice, isPrinted };
      }
    }
  }
  if (best === null) throw new Error('tileTemplate: nothing tried');
  return { lattice: best.lattice, templates: [placeTemplate(template, best.move)], isPrinted: best.isPrinted };
}

function latticeFor(width: number, height: number, frame: PaperFrame): Lattice {
  const { tileWidthMm, overlapMm } = frame;
  // A roll is cut where the template ends.
  const tileHeightMm = frame.roll ? Math.min(frame.tileHeightMm, height) : frame.tileHeightMm;
  const stepXMm = tileWidthMm - overlapMm;
  const columns = tilesAlong(width, tileWidthMm, stepXMm);
  if (height <= tileHeightMm) return { columns, rows: 1, tileWidthMm, tileHeightMm, stepXMm, stepYMm: tileHeightMm };
  const stepYMm = tileHeightMm - overlapMm;
  return { columns, rows: tilesAlong(height, tileHeightMm, stepYMm), tileWidthMm, tileHeightMm, stepXMm, stepYMm };
}

/** Which tiles are worth a page when the drawing is moved by `x`, `y`, and how many lines of words a joint would cut. */
function printedTiles(
  drawing: Drawing,
  x: number,
  y: number,
  lattice: Lattice,
): { isPrinted: readonly boolean[]; cutWords: number } {
  const segments = segmentsByTile(drawing, x, y, lattice);
  const isPrinted = segments.map((list) => list.length > 0);
  for (const [tile, list] of segments.entries()) {
    // A tile that only repeats what its neighbours' overlaps show is left out.
    if (isPrinted[tile] && !hasLineOfItsOwn(list, ownBox(lattice, tile, isPrinted))) isPrinted[tile] = false;
  }
  let cutWords = 0;
  for (const words of drawing.words) {
    const box = moveBox(wordsBox(words), x, y);
    const touched = tilesOfBox(box, lattice).filter((tile) => isPrinted[tile]);
    if (touched.length === 0) isPrinted[tileOfMiddle(box, lattice)] = true;
    else if (!touched.some((tile) => isBoxInside(box, visibleCell(lattice, isPrinted, tile)))) cutWords += 1;
  }
  return { isPrinted, cutWords };
}

/** Tiles that show some of the box. */
export function tilesOfBox(box: Box2, lattice: Lattice): readonly number[] {
  const [c0, c1] = tilesTouched(box.minX, box.maxX, lattice.tileWidthMm, lattice.stepXMm, lattice.columns);
  const [r0, r1] = tilesTouched(box.minY, box.maxY, lattice.tileHeightMm, lattice.stepYMm, lattice.rows);
  const tiles: number[] = [];
  for (let r = r0; r <= r1; r += 1) for (let c = c0; c <= c1; c += 1) tiles.push(r * lattice.columns + c);
  return tiles;
}

function tileOfMiddle(box: Box2, lattice: Lattice): number {
  const column = Math.floor((box.minX + box.maxX) / 2 / lattice.stepXMm);
  const row = Math.floor((box.minY + box.maxY) / 2 / lattice.stepYMm);
  return clamp(row, lattice.rows) * lattice.columns + clamp(column, lattice.columns);
}

const clamp = (index: number, count: number): number => Math.min(count - 1, Math.max(0, index));

/** Per tile the segments that run through it, as packed ends, block space. */
function segmentsByTile(
  drawing: Drawing,
  x: number,
  y: number,
  lattice: Lattice,
): readonly (readonly Float64Array[])[] {
  const tiles: Float64Array[][] = Array.from({ length: lattice.columns * lattice.rows }, () => []);
  const boxes = tiles.map((_, tile) => tileBox(lattice, tile));
  for (const { points, closed } of drawing.strokes) {
    const count = points.length / 2;
    for (let i = 0; i < (closed ? count : count - 1); i += 1) {
      const j = (i + 1) % count;
      const ends = Float64Array.of(points[2 * i] + x, points[2 * i + 1] + y, points[2 * j] + x, points[2 * j + 1] + y);
      const [ax, ay, bx, by] = ends;
      const box = { minX: Math.min(ax, bx), minY: Math.min(ay, by), maxX: Math.max(ax, bx), maxY: Math.max(ay, by) };
      for (const tile of tilesOfBox(box, lattice))
        if (segmentInBox(ax, ay, bx, by, boxes[tile]) !== null) tiles[tile].push(ends);
    }
  }
  return tiles;
}

/** The part of a tile that no printed neighbour repeats. */
function ownBox(lattice: Lattice, tile: number, isPrinted: readonly boolean[]): Box2 {
  const box = tileBox(lattice, tile);
  const repeats = (side: Side): boolean => {
    const other = neighbourOf(lattice, tile, side);
    return other >= 0 && isPrinted[other];
  };
  const [left, right, below, above] = SIDES.map(repeats);
  const overlapX = lattice.tileWidthMm - lattice.stepXMm;
  const overlapY = lattice.tileHeightMm - lattice.stepYMm;
  return {
    minX: box.minX + (left ? overlapX : 0),
    maxX: box.maxX - (right ? overlapX : 0),
    minY: box.minY + (below ? overlapY : 0),
    maxY: box.maxY - (above ? overlapY : 0),
  };
}

function hasLineOfItsOwn(segments: readonly Float64Array[], own: Box2): boolean {
  return segments.some(([ax, ay, bx, by]) => {
    const span = segmentInBox(ax, ay, bx, by, own);
    return span !== null && (span.to > span.from || (ax === bx && ay === by));
  });
}

function isLess(a: readonly number[], b: readonly number[]): boolean {
  const at = a.findIndex((value, i) => value !== b[i]);
  return at >= 0 && a[at] < b[at];
}
