import { segmentInBox } from '../../geom/clip-to-box.ts';
import type { Box2 } from '../../geom/ring.ts';
import type { Move2 } from '../../geom/turn-and-move.ts';
import type { Drawing, Stroke, Template, Words } from '../../model/template.ts';
import { moveDrawing, placeTemplate, sizeOf, type Block, type PlacedTemplate } from './block.ts';
import { drawingOf, labelsOf } from './labels.ts';
import { neighbourOf, SIDES, tileBox, tilesAlong, tilesTouched, type Lattice, type Side } from './lattice.ts';
import type { PaperFrame } from './paper-frame.ts';
import { thinLine } from './thin-line.ts';
import { visibleCell } from './visible-cell.ts';
import { drawnBox, isBoxInside, wordsBox } from './words-box.ts';

/** Places tried along each direction, as shares of the slack: the middle first, then towards both ends. */
const SHIFTS = [0.5, 0.25, 0.75, 0, 1];

/** Turns tried, degrees, and how many of the shifts with each: upright ones with all, others with the middle and both ends of the slack. */
const TURNS_DEG = [0, 90, 15, -15, 30, -30, 45, -45, 60, -60, 75, -75];

/** Lines are thinned to points this far apart while turns and shifts are tried, mm. */
const THIN_MM = 2;

/** A turn that needs a grid this many times larger than the best so far is not tried: a slanting rope would ask for a square of tiles. */
const MOST_TIMES = 4;

/**
 * Parts one large template into tiles, turned and shifted within its slack so that the fewest pages carry a line; among equals the fewest
 * words are cut, then it is turned least and lies in the middle. Words that a thin line ties to their place do not count: they can move.
 * @returns the best way, then others that take as many pages, for where its words find no room.
 */
export function tileTemplate(template: Template, frame: PaperFrame): readonly Block[] {
  const fixed = fixedPart(template.drawing);
  const trials: Trial[] = [];
  let fewest = Infinity;
  for (const [t, turnDeg] of TURNS_DEG.entries()) {
    const turnRad = (turnDeg * Math.PI) / 180;
    const turned = moveDrawing(fixed, { x: 0, y: 0, turnRad });
    const thinned = segmentsOf(turned.strokes, THIN_MM);
    const box = drawnBox(turned);
    const { width, height } = sizeOf(box);
    const lattice = latticeFor(width, height, frame);
    if (lattice.columns * lattice.rows > MOST_TIMES * fewest) continue;
    const slackX = (lattice.columns - 1) * lattice.stepXMm + lattice.tileWidthMm - width;
    const slackY = (lattice.rows - 1) * lattice.stepYMm + lattice.tileHeightMm - height;
    const shifts = turnDeg % 90 === 0 ? SHIFTS : SHIFTS.filter((share) => share % 0.5 === 0);
    for (const [ix, shareX] of shifts.entries()) {
      for (const [iy, shareY] of shifts.entries()) {
        const x = shareX * slackX - box.minX;
        const y = shareY * slackY - box.minY;
        const { isPrinted, cutWords } = printedTiles(thinned, turned.words, x, y, lattice);
        const score = [isPrinted.filter(Boolean).length, cutWords, t, ix + iy];
        // A grid is compared with that of the best so far, whose pages are the fewest.
        if (score[0] < (trials[0]?.score[0] ?? Infinity)) fewest = isPrinted.length;
        keepBest(trials, { score, move: { x, y, turnRad }, lattice, turned });
      }
    }
  }
  if (trials.length === 0) throw new Error('tileTemplate: nothing tried');
  return trials
    .filter(({ score }) => score[0] === trials[0].score[0])
    .map(({ lattice, move, turned }) => {
      // The choice was made on thinned lines; what is printed is found on the lines themselves.
      const { isPrinted } = printedTiles(segmentsOf(turned.strokes, 0), turned.words, move.x, move.y, lattice);
      return trimmed({ lattice, templates: [placeTemplate(template, move)], isPrinted });
    });
}

/** Ways that are kept to fall back on. */
const MOST_KEPT = 8;

/** Puts a trial among the best, the best first. */
function keepBest(trials: Trial[], trial: Trial): void {
  const at = trials.findIndex(({ score }) => isLess(trial.score, score));
  trials.splice(at < 0 ? trials.length : at, 0, trial);
  if (trials.length > MOST_KEPT) trials.pop();
}

/** A block of several templates, with the tiles of the lattice that are worth a page. */
export function tileTogether(lattice: Lattice, templates: readonly PlacedTemplate[]): Block {
  const fixed = templates.map(({ drawing }) => fixedPart(drawing));
  const segments = segmentsOf(
    fixed.flatMap(({ strokes }) => strokes),
    0,
  );
  const words = fixed.flatMap((drawing) => drawing.words);
  const { isPrinted } = printedTiles(segments, words, 0, 0, lattice);
  return trimmed({ lattice, templates, isPrinted });
}

/** What stays where it is: words that a thin line ties to their place can move. */
export function fixedPart(drawing: Drawing): Drawing {
  const { strokes, labels } = labelsOf(drawing);
  return drawingOf({ strokes, labels: labels.filter(({ leader }) => leader === null) });
}

/** One turn and shift. */
interface Trial {
  /** The less the better, the first number first. */
  readonly score: readonly number[];
  readonly move: Move2;
  readonly lattice: Lattice;
  readonly turned: Drawing;
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

/** Straight parts, packed ax ay bx by, of lines thinned to points this far apart, mm. */
function segmentsOf(strokes: readonly Stroke[], thinMm: number): Float64Array {
  const packed: number[] = [];
  for (const stroke of strokes) {
    const points = thinLine(stroke.points, thinMm);
    const count = points.length / 2;
    for (let i = 0; i < (stroke.closed ? count : count - 1); i += 1) {
      const j = (i + 1) % count;
      packed.push(points[2 * i], points[2 * i + 1], points[2 * j], points[2 * j + 1]);
    }
  }
  return Float64Array.from(packed);
}

/** Which tiles are worth a page when all is moved by `x`, `y`, and how many lines of words a joint would cut. */
function printedTiles(
  segments: Float64Array,
  allWords: readonly Words[],
  x: number,
  y: number,
  lattice: Lattice,
): { isPrinted: readonly boolean[]; cutWords: number } {
  const moved = segments.map((value, i) => value + (i % 2 === 0 ? x : y));
  const byTile = segmentsByTile(moved, lattice);
  const isPrinted = byTile.map((list) => list.length > 0);
  for (const [tile, list] of byTile.entries()) {
    // A tile that only repeats what its neighbours' overlaps show is left out.
    if (isPrinted[tile] && !hasLineOfItsOwn(moved, list, ownBox(lattice, tile, isPrinted))) isPrinted[tile] = false;
  }
  let cutWords = 0;
  for (const words of allWords) {
    const box = wordsBox({ ...words, at: { x: words.at.x + x, y: words.at.y + y } });
    const touched = tilesOfBox(box, lattice).filter((tile) => isPrinted[tile]);
    if (touched.length === 0) isPrinted[tileOfMiddle(box, lattice)] = true;
    else if (!touched.some((tile) => isBoxInside(box, visibleCell(lattice, isPrinted, tile)))) cutWords += 1;
  }
  return { isPrinted, cutWords };
}

/** Tiles that show some of the box. */
function tilesOfBox(box: Box2, lattice: Lattice): readonly number[] {
  const [c0, c1] = columnsOf(box.minX, box.maxX, lattice);
  const [r0, r1] = rowsOf(box.minY, box.maxY, lattice);
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

/** Per tile the segments that run through it, each by where it begins in the packed list. */
function segmentsByTile(segments: Float64Array, lattice: Lattice): readonly (readonly number[])[] {
  const tiles: number[][] = Array.from({ length: lattice.columns * lattice.rows }, () => []);
  const boxes = tiles.map((_, tile) => tileBox(lattice, tile));
  for (let i = 0; i < segments.length; i += 4) {
    const [ax, ay, bx, by] = [segments[i], segments[i + 1], segments[i + 2], segments[i + 3]];
    const [c0, c1] = columnsOf(Math.min(ax, bx), Math.max(ax, bx), lattice);
    const [r0, r1] = rowsOf(Math.min(ay, by), Math.max(ay, by), lattice);
    for (let r = r0; r <= r1; r += 1) {
      for (let c = c0; c <= c1; c += 1) {
        const tile = r * lattice.columns + c;
        if (segmentInBox(ax, ay, bx, by, boxes[tile]) !== null) tiles[tile].push(i);
      }
    }
  }
  return tiles;
}

const columnsOf = (min: number, max: number, { tileWidthMm, stepXMm, columns }: Lattice): readonly [number, number] =>
  tilesTouched(min, max, tileWidthMm, stepXMm, columns);
const rowsOf = (min: number, max: number, { tileHeightMm, stepYMm, rows }: Lattice): readonly [number, number] =>
  tilesTouched(min, max, tileHeightMm, stepYMm, rows);

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

function hasLineOfItsOwn(segments: Float64Array, list: readonly number[], own: Box2): boolean {
  return list.some((i) => {
    const [ax, ay, bx, by] = [segments[i], segments[i + 1], segments[i + 2], segments[i + 3]];
    const span = segmentInBox(ax, ay, bx, by, own);
    return span !== null && (span.to > span.from || (ax === bx && ay === by));
  });
}

function isLess(a: readonly number[], b: readonly number[]): boolean {
  const at = a.findIndex((value, i) => value !== b[i]);
  return at >= 0 && a[at] < b[at];
}
