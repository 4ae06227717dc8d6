import { segmentInBox } from '../../geom/clip-to-box.ts';
import type { Box2 } from '../../geom/ring.ts';
import type { Move2 } from '../../geom/turn-and-move.ts';
import type { Drawing, Template } from '../../model/template.ts';
import { moveDrawing, placeTemplate, sizeOf, type Block } from './block.ts';
import { drawingOf, labelsOf } from './labels.ts';
import { neighbourOf, SIDES, tileBox, tilesAlong, tilesTouched, type Lattice, type Side } from './lattice.ts';
import type { PaperFrame } from './paper-frame.ts';
import { visibleCell } from './visible-cell.ts';
import { drawnBox, isBoxInside, wordsBox } from './words-box.ts';

/** Places tried along each direction, as shares of the slack: the middle first, then towards both ends. */
const SHIFTS = [0.5, 0.25, 0.75, 0, 1];

/** Turns tried, degrees, and how many of the shifts with each: upright ones with all, others with the middle and both ends of the slack. */
const TURNS_DEG = [0, 90, 15, -15, 30, -30, 45, -45, 60, -60, 75, -75];

/**
 * Parts one large template into tiles, turned and shifted within its slack so that the fewest pages carry a line; among equals the fewest
 * words are cut, then it is turned least and lies in the middle. Words that a thin line ties to their place do not count: they can move.
 */
export function tileTemplate(template: Template, frame: PaperFrame): Block {
  const { strokes, labels } = labelsOf(template.drawing);
  const fixed = drawingOf({ strokes, labels: labels.filter(({ leader }) => leader === null) });
  let best: { score: readonly number[]; move: Move2; lattice: Lattice; isPrinted: readonly boolean[] } | null = null;
  for (const [t, turnDeg] of TURNS_DEG.entries()) {
    const turnRad = (turnDeg * Math.PI) / 180;
    const turned = moveDrawing(fixed, { x: 0, y: 0, turnRad });
    const box = drawnBox(turned);
    const { width, height } = sizeOf(box);
    const lattice = latticeFor(width, height, frame);
    const slackX = (lattice.columns - 1) * lattice.stepXMm + lattice.tileWidthMm - width;
    const slackY = (lattice.rows - 1) * lattice.stepYMm + lattice.tileHeightMm - height;
    const shifts = turnDeg % 90 === 0 ? SHIFTS : SHIFTS.filter((share) => share % 0.5 === 0);
    for (const [ix, shareX] of shifts.entries()) {
      for (const [iy, shareY] of shifts.entries()) {
        const x = shareX * slackX - box.minX;
        const y = shareY * slackY - box.minY;
        const { isPrinted, cutWords } = printedTiles(turned, x, y, lattice);
        const score = [isPrinted.filter(Boolean).length, cutWords, t, ix + iy];
        if (best === null || isLess(score, best.score)) best = { score, move: { x, y, turnRad }, lattice, isPrinted };
      }
    }
  }
  if (best === null) throw new Error('tileTemplate: nothing tried');
  return trimmed({ lattice: best.lattice, templates: [placeTemplate(template, best.move)], isPrinted: best.isPrinted });
}

/** The block without rows and columns at its rim that carry no page: what they would have shown, their neighbours' overlaps show. */
function trimmed(block: Block): Block {
  const { lattice, isPrinted } = block;
  const rows = printedRange(lattice.rows, (row) => isPrinted.slice(row * lattice.columns, (row + 1) * lattice.columns));
  const columns = printedRange(lattice.columns, (column) =>
    isPrinted.filter((_, tile) => tile % lattice.columns === column),
  );
  const move = { x: -columns.first * lattice.stepXMm, y: -rows.first * lattice.stepYMm, turnRad: 0 };
  return {
    lattice: { ...lattice, columns: columns.count, rows: rows.count },
    templates: block.templates.map((placed) => ({
      ...placed,
      move: { ...placed.move, x: placed.move.x + move.x, y: placed.move.y + move.y },
      drawing: moveDrawing(placed.drawing, move),
    })),
    isPrinted: isPrinted.filter((_, tile) => {
      const [row, column] = [Math.floor(tile / lattice.columns) - rows.first, (tile % lattice.columns) - columns.first];
      return row >= 0 && row < rows.count && column >= 0 && column < columns.count;
    }),
  };
}

function printedRange(count: number, tilesOf: (index: number) => readonly boolean[]): { first: number; count: number } {
  const used = Array.from({ length: count }, (_, index) => tilesOf(index).some(Boolean));
  const first = used.indexOf(true);
  return { first, count: used.lastIndexOf(true) - first + 1 };
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
    const box = wordsBox({ ...words, at: { x: words.at.x + x, y: words.at.y + y } });
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
