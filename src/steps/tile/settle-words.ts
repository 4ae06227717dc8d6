import type { Box2 } from '../../geom/ring.ts';
import { SMALLEST_WORDS_MM } from '../../model/line-style.ts';
import type { Words } from '../../model/template.ts';
import type { Block, PlacedTemplate } from './block.ts';
import { Obstacles } from './obstacles.ts';
import { LEADING } from './pen.ts';
import { wrapText } from './text-fit.ts';
import { visibleCell } from './visible-cell.ts';
import { doBoxesOverlap, isBoxInside, moveBox, wordsBox } from './words-box.ts';

/** Step and reach of the search for a free place, mm. */
const SEARCH_STEP_MM = 1.5;
const SEARCH_STEPS = 14;

/**
 * Gives every line of words of a block a place where it stays whole once the pages are joined: where it was meant to stand if that is
 * possible, else moved by as little as keeps it off lines and other words, made smaller or broken only where no page could hold it.
 * @returns the block's templates with their words settled; no words are lost.
 */
export function settleWords(block: Block): readonly PlacedTemplate[] {
  if (block.isPrinted.length === 1) return block.templates;
  const cells = block.isPrinted.flatMap((isPrinted, tile) =>
    isPrinted ? [visibleCell(block.lattice, block.isPrinted, tile)] : [],
  );
  const obstacles = new Obstacles();
  for (const { drawing } of block.templates) obstacles.addStrokes(drawing.strokes);
  const isWhole = (words: Words): boolean => cells.some((cell) => isBoxInside(wordsBox(words), cell));
  for (const { drawing } of block.templates)
    for (const words of drawing.words) if (isWhole(words)) obstacles.addBox(wordsBox(words));
  return block.templates.map((template) => ({
    ...template,
    drawing: {
      ...template.drawing,
      words: template.drawing.words.flatMap((words) => (isWhole(words) ? [words] : settleOne(words, cells, obstacles))),
    },
  }));
}

function settleOne(words: Words, cells: readonly Box2[], obstacles: Obstacles): readonly Words[] {
  const box = wordsBox(words);
  const touched = cells.filter((cell) => doBoxesOverlap(cell, box));
  const near = touched.length > 0 ? touched : [nearestCell(box, cells)];
  const able = near.filter((cell) => holds(cell, box));
  const parts = able.length > 0 ? [words] : refit(words, near);
  return parts.map((part) => {
    const home = nearestPlace(wordsBox(part), able.length > 0 ? able : near, obstacles);
    const settled = { ...part, at: { x: part.at.x + home.x, y: part.at.y + home.y } };
    obstacles.addBox(wordsBox(settled));
    return settled;
  });
}

/** The smallest move that brings the box whole into one of the cells and off everything drawn; onto lines only where all is full. */
function nearestPlace(box: Box2, cells: readonly Box2[], obstacles: Obstacles): { x: number; y: number } {
  const reach = SEARCH_STEP_MM * (SEARCH_STEPS + 1);
  let best: { x: number; y: number; length: number; isFree: boolean } | null = null;
  for (const cell of cells) {
    const into = moveInto(box, cell);
    const inside = moveBox(box, into.x, into.y);
    const near = obstacles.within({
      minX: inside.minX - reach,
      minY: inside.minY - reach,
      maxX: inside.maxX + reach,
      maxY: inside.maxY + reach,
    });
    for (let i = -SEARCH_STEPS; i <= SEARCH_STEPS; i += 1) {
      for (let j = -SEARCH_STEPS; j <= SEARCH_STEPS; j += 1) {
        const x = into.x + i * SEARCH_STEP_MM;
        const y = into.y + j * SEARCH_STEP_MM;
        const length = Math.hypot(x, y);
        if (best !== null && best.isFree && length >= best.length) continue;
        const there = moveBox(box, x, y);
        const isOriginal = i === 0 && j === 0;
        if (!isOriginal && !isBoxInside(there, cell)) continue;
        const isFree = near.isFree(there);
        if (!isFree && !(isOriginal && (best === null || (!best.isFree && length < best.length)))) continue;
        best = { x, y, length, isFree };
      }
    }
  }
  if (best === null) throw new Error('nearestPlace: no cell');
  return best;
}

/** The smallest move of the box into the cell; a box too large for it is laid on the cell's lower left. */
function moveInto(box: Box2, cell: Box2): { x: number; y: number } {
  const along = (min: number, max: number, low: number, high: number): number =>
    max - min > high - low || min < low ? low - min : max > high ? high - max : 0;
  return { x: along(box.minX, box.maxX, cell.minX, cell.maxX), y: along(box.minY, box.maxY, cell.minY, cell.maxY) };
}

/** Words too long for any cell: smaller while they can be read, then in several lines. */
function refit(words: Words, cells: readonly Box2[]): readonly Words[] {
  const box = wordsBox(words);
  const isUpright = box.maxY - box.minY > box.maxX - box.minX;
  const room = Math.max(...cells.map((cell) => (isUpright ? cell.maxY - cell.minY : cell.maxX - cell.minX)));
  const length = isUpright ? box.maxY - box.minY : box.maxX - box.minX;
  const heightMm = Math.max(SMALLEST_WORDS_MM, (words.heightMm * room) / length - ROUNDING_MM);
  const smaller = { ...words, heightMm };
  if (cells.some((cell) => holds(cell, wordsBox(smaller)))) return [smaller];
  const down = LEADING * SMALLEST_WORDS_MM;
  return wrapText(words.text, SMALLEST_WORDS_MM, room - SMALLEST_WORDS_MM).map((text, i) => ({
    ...words,
    text,
    heightMm: SMALLEST_WORDS_MM,
    at: { x: words.at.x + i * down * Math.sin(words.angleRad), y: words.at.y - i * down * Math.cos(words.angleRad) },
  }));
}

/** So that words made to fit exactly are not found too long again, mm of capital height. */
const ROUNDING_MM = 1e-6;

function holds(cell: Box2, box: Box2): boolean {
  return box.maxX - box.minX <= cell.maxX - cell.minX && box.maxY - box.minY <= cell.maxY - cell.minY;
}

function nearestCell(box: Box2, cells: readonly Box2[]): Box2 {
  const away = (cell: Box2): number => {
    const { x, y } = moveInto(box, cell);
    return Math.hypot(x, y);
  };
  return cells.reduce((best, cell) => (away(cell) < away(best) ? cell : best));
}
