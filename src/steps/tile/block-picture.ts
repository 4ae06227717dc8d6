import type { PieceId } from '../../base/ids.ts';
import { joinBoxes, type Box2, type Ring } from '../../geom/ring.ts';
import type { Vec2 } from '../../geom/vec.ts';
import { widestSpot } from '../../geom/widest-spot.ts';
import type { CutThing } from '../../model/foam-strip.ts';
import type { Words } from '../../model/template.ts';
import type { Block } from './block.ts';
import { placeName, tileBox } from './lattice.ts';
import { Obstacles } from './obstacles.ts';
import { Pen, TYPE_MM } from './pen.ts';
import { thinLine } from './thin-line.ts';
import { isBoxInside, turnedWordsBox, wordsBox } from './words-box.ts';

/** Where a picture lies on its page, and how much smaller it is than the block. */
export interface PicturePlace {
  readonly left: number;
  readonly bottom: number;
  readonly scale: number;
}

/** Points of an outline nearer than this on paper are one, mm. */
const FINEST_MM = 0.12;

/** How far from its piece a number is looked for a place, and the step, mm. */
const REACH_MM = 12;
const STEP_MM = 1;

/** From a tile's corner to its name, mm. */
const INSET_MM = 1.2;

/** Draws a block small: its printed tiles with their names, and the cut lines of its pieces with their numbers. */
export function drawBlockPicture(
  pen: Pen,
  block: Block,
  place: PicturePlace,
  pieces: ReadonlyMap<PieceId, CutThing>,
): void {
  const { left, bottom, scale } = place;
  const { lattice, isPrinted } = block;
  const onPage = (points: ArrayLike<number>): Float64Array =>
    Float64Array.from(points, (value, i) => (i % 2 === 0 ? left : bottom) + value * scale);
  const tiles = isPrinted.flatMap((is, tile) => (is ? [{ tile, box: boxOnPage(tileBox(lattice, tile), place) }] : []));
  const outlines = block.templates.map(({ piece, turned, drawing }) => ({
    served: turned === undefined ? [piece] : [piece, turned],
    rings: drawing.strokes
      .filter(({ role }) => role === 'cut')
      .map(({ points }) => onPage(thinLine(points, FINEST_MM / scale))),
  }));
  const whole = tiles.map(({ box }) => box).reduce(joinBoxes);
  const frames = new Pen();
  for (const { box } of tiles) frames.rectangle('frame', box.minX, box.minY, box.maxX - box.minX, box.maxY - box.minY);
  pen.strokes.push(...frames.strokes);
  const obstacles = new Obstacles();
  obstacles.addStrokes(frames.strokes);
  for (const { rings } of outlines) {
    const strokes = rings.map((points) => ({ role: 'map' as const, points, closed: true }));
    pen.strokes.push(...strokes);
    obstacles.addStrokes(strokes);
  }
  for (const { served, rings } of outlines) {
    const text = served.map((piece) => String(pieces.get(piece)?.number ?? piece)).join('/');
    writeFree(pen, text, numberPlaces(rings), obstacles, true, whole);
  }
  if (isPrinted.length === 1) return;
  for (const { tile, box } of tiles) writeFree(pen, placeName(lattice, tile), cornerPlaces(box), obstacles, false, box);
}

/** Writes at the first place that is free and inside the box; nowhere if none is: the list names every page too. */
function writeFree(
  pen: Pen,
  text: string,
  places: Iterable<Pick<Words, 'at' | 'align'>>,
  obstacles: Obstacles,
  bold: boolean,
  within: Box2,
): void {
  for (const { at, align } of places) {
    const words: Words = { text, at, align, angleRad: 0, heightMm: TYPE_MM.body, ...(bold ? { bold } : {}) };
    const box = turnedWordsBox(words);
    if (!obstacles.isFree(box) || !isBoxInside(wordsBox(words), within)) continue;
    obstacles.addBox(box);
    pen.words.push(words);
    return;
  }
}

/** In the widest spot of the piece, else beside it, nearest first. */
function* numberPlaces(rings: readonly Ring[]): Generator<Pick<Words, 'at' | 'align'>> {
  if (rings.length === 0) return;
  const spot = widestSpot(rings, 0.1);
  const around: Vec2[] = [];
  for (let x = -REACH_MM; x <= REACH_MM; x += STEP_MM) {
    for (let y = -REACH_MM; y <= REACH_MM; y += STEP_MM) around.push({ x, y });
  }
  around.sort((a, b) => Math.hypot(a.x, a.y) - Math.hypot(b.x, b.y));
  for (const { x, y } of around) yield { at: { x: spot.x + x, y: spot.y + y - TYPE_MM.body / 2 }, align: 'centre' };
}

function* cornerPlaces({ minX, minY, maxX, maxY }: Box2): Generator<Pick<Words, 'at' | 'align'>> {
  const [low, high] = [minY + INSET_MM, maxY - INSET_MM - TYPE_MM.body];
  yield { at: { x: minX + INSET_MM, y: low }, align: 'left' };
  yield { at: { x: minX + INSET_MM, y: high }, align: 'left' };
  yield { at: { x: maxX - INSET_MM, y: low }, align: 'right' };
  yield { at: { x: maxX - INSET_MM, y: high }, align: 'right' };
  yield { at: { x: (minX + maxX) / 2, y: (minY + maxY - TYPE_MM.body) / 2 }, align: 'centre' };
}

function boxOnPage({ minX, minY, maxX, maxY }: Box2, { left, bottom, scale }: PicturePlace): Box2 {
  return {
    minX: left + minX * scale,
    minY: bottom + minY * scale,
    maxX: left + maxX * scale,
    maxY: bottom + maxY * scale,
  };
}
