import type { Say } from '../../base/paper-language.ts';
import type { Box2 } from '../../geom/ring.ts';
import type { Words } from '../../model/template.ts';
import { neighbourOf, SIDES, tileBox, type Lattice, type Side } from './lattice.ts';
import type { Obstacles } from './obstacles.ts';
import { FOOT_MM, type PaperFrame } from './paper-frame.ts';
import { TYPE_MM, type Pen } from './pen.ts';
import { turnedWordsBox, wordsBox } from './words-box.ts';

/** The printed tiles beside one tile. */
export type Neighbours = Readonly<Record<Side, boolean>>;

/** Arm of a corner cross and length of an edge tick, mm. */
const CROSS_MM = 4;
const TICK_MM = 2;

/** Ticks along the joints every so many mm of the block. */
const TICK_SPACING_MM = 50;

/** From a joint to the words beside it, mm. */
const LABEL_GAP_MM = 1.4;

/** Step of the search for a free place along a side, mm. */
const LABEL_STEP_MM = 2;

export function neighboursOf(lattice: Lattice, isPrinted: readonly boolean[], tile: number): Neighbours {
  const [left, right, below, above] = SIDES.map((side) => isPrinted[neighbourOf(lattice, tile, side)] === true);
  return { left, right, below, above };
}

/**
 * The marks by which tiles are joined, page space. A page is trimmed along its left and lower line and laid on the glue strip of its
 * neighbour: so a joint runs along the left edge of one page and along the inner line of the strip of the other, and both show the
 * same crosses and ticks there.
 *
 *     ┼───────────────┬──┼      ┼ corner crosses
 *     │               │g │      │ left: joint with the neighbour on the left
 *     ┤               ├l │      ┤ ticks every 50 mm of the block
 *     │               │ue│      ┬ strip that goes under the neighbour on the right
 *     ┼───────────────┼──┘
 */
export function drawTileMarks(pen: Pen, frame: PaperFrame, lattice: Lattice, tile: number, beside: Neighbours): void {
  const { marginMm } = frame;
  const left = marginMm;
  const bottom = marginMm + FOOT_MM;
  const right = left + lattice.tileWidthMm;
  const top = bottom + lattice.tileHeightMm;
  // A page by itself has nothing to be joined to: its corner crosses alone show that the printer cut nothing off.
  if (SIDES.some((side) => beside[side]))
    pen.rectangle('frame', left, bottom, lattice.tileWidthMm, lattice.tileHeightMm);
  const jointX = beside.right ? left + lattice.stepXMm : right;
  const jointY = beside.above ? bottom + lattice.stepYMm : top;
  if (jointX < right) pen.line('frame', jointX, bottom, jointX, top);
  if (jointY < top) pen.line('frame', left, jointY, right, jointY);
  // At the same places of the block on every page, printed neighbour or not, so that those of two pages always meet.
  const crossX = neighbourOf(lattice, tile, 'right') < 0 ? right : left + lattice.stepXMm;
  const crossY = neighbourOf(lattice, tile, 'above') < 0 ? top : bottom + lattice.stepYMm;
  const within = { minX: left, minY: bottom, maxX: right, maxY: top };
  for (const x of [left, crossX]) for (const y of [bottom, crossY]) drawCross(pen, x, y, within);
  const block = tileBox(lattice, tile);
  for (const mm of ticksBetween(block.minY, jointY - bottom)) {
    if (beside.left) pen.line('ruler', left, bottom + mm, left + TICK_MM, bottom + mm);
    if (beside.right) pen.line('ruler', jointX - TICK_MM, bottom + mm, jointX, bottom + mm);
  }
  for (const mm of ticksBetween(block.minX, jointX - left)) {
    if (beside.below) pen.line('ruler', left + mm, bottom, left + mm, bottom + TICK_MM);
    if (beside.above) pen.line('ruler', left + mm, jointY - TICK_MM, left + mm, jointY);
  }
}

function drawCross(pen: Pen, x: number, y: number, within: Box2): void {
  pen.line('ruler', Math.max(within.minX, x - CROSS_MM), y, Math.min(within.maxX, x + CROSS_MM), y);
  pen.line('ruler', x, Math.max(within.minY, y - CROSS_MM), x, Math.min(within.maxY, y + CROSS_MM));
}

/** Places of the ticks along a side that begins at `start` of the block, counted from the side's beginning, clear of its corners. */
function ticksBetween(start: number, length: number): readonly number[] {
  const ticks: number[] = [];
  for (
    let k = Math.ceil((start + CROSS_MM + 1) / TICK_SPACING_MM);
    k * TICK_SPACING_MM - start < length - CROSS_MM - 1;
    k += 1
  ) {
    ticks.push(k * TICK_SPACING_MM - start);
  }
  return ticks;
}

/**
 * Says at each joint which page meets it there, at a place free of lines and words.
 * @param said.nameOf    name of the page on that side.
 * @param said.obstacles everything drawn on the tile; the new words are added.
 * @returns sides along which no place was free.
 */
export function labelJoints(
  pen: Pen,
  frame: PaperFrame,
  lattice: Lattice,
  said: {
    readonly beside: Neighbours;
    readonly nameOf: (side: Side) => string;
    readonly obstacles: Obstacles;
    readonly say: Say;
  },
): readonly Side[] {
  const { beside, nameOf, obstacles, say } = said;
  return SIDES.filter(
    (side) =>
      beside[side] &&
      !labelJoint(pen, frame, lattice, side, say(jointText(side, nameOf(side), frame.overlapMm)), obstacles),
  );
}

function jointText(side: Side, name: string, overlapMm: number): string {
  if (overlapMm === 0) return `meets ${name}`;
  return side === 'left' || side === 'below' ? `cut here, lay on ${name}` : `glue ${name} here`;
}

function labelJoint(
  pen: Pen,
  frame: PaperFrame,
  lattice: Lattice,
  side: Side,
  text: string,
  obstacles: Obstacles,
): boolean {
  const isUpright = side === 'left' || side === 'right';
  const left = frame.marginMm;
  const bottom = frame.marginMm + FOOT_MM;
  const [tile, step] = isUpright ? [lattice.tileWidthMm, lattice.stepXMm] : [lattice.tileHeightMm, lattice.stepYMm];
  const length = isUpright ? lattice.tileHeightMm : lattice.tileWidthMm;
  const strip = tile - step;
  // Beyond the joint in the strip where it is wide enough, else on this side of it.
  const needs = TYPE_MM.body * 1.45 + 2 * LABEL_GAP_MM;
  const depth = side === 'left' || side === 'below' ? 0 : strip >= needs ? step : step - needs;
  const angleRad = isUpright ? Math.PI / 2 : 0;
  const words: Words = { text, at: { x: 0, y: 0 }, angleRad, heightMm: TYPE_MM.body, align: 'centre' };
  const base = wordsBox(words);
  // Upright words read from the right: their letters' feet point right.
  const across = depth + LABEL_GAP_MM - (isUpright ? base.minX : base.minY);
  const half = (isUpright ? base.maxY - base.minY : base.maxX - base.minX) / 2;
  for (let k = 0; k * LABEL_STEP_MM < length; k += 1) {
    const along = length / 2 + (k % 2 === 0 ? 1 : -1) * Math.ceil(k / 2) * LABEL_STEP_MM;
    if (along - half < CROSS_MM + 1 || along + half > length - CROSS_MM - 1) continue;
    const at = isUpright ? { x: left + across, y: bottom + along } : { x: left + along, y: bottom + across };
    const box = turnedWordsBox({ ...words, at });
    if (!obstacles.isFree(box)) continue;
    pen.write(text, at, { angleRad, align: 'centre' });
    obstacles.addBox(box);
    return true;
  }
  return false;
}
