import { boxOfPoints, joinBoxes, type Box2 } from '../../geom/ring.ts';
import { textWidthMm } from '../../geom/text-width.ts';
import { movePoints } from '../../geom/turn-and-move.ts';
import type { Drawing, Words } from '../../model/template.ts';

/** How far letters reach under the baseline and over it, as shares of the capital height (DejaVu Sans: p and É). */
const DESCENT = 0.33;
const ASCENT = 1.1;

/** The upright box round a line of words, mm. */
export function wordsBox(words: Words): Box2 {
  const { heightMm, at, angleRad } = words;
  const width = textWidthMm(words.text, heightMm);
  const left = words.align === 'left' ? 0 : words.align === 'right' ? -width : -width / 2;
  const [low, high] = [-DESCENT * heightMm, ASCENT * heightMm];
  const corners = [left, low, left + width, low, left + width, high, left, high];
  return boxOfPoints(movePoints(corners, { x: at.x, y: at.y, turnRad: angleRad }));
}

/** The upright box round all lines and words of a drawing, mm; inside out when there are none. */
export function drawnBox({ strokes, words }: Drawing): Box2 {
  const boxes = [...strokes.map(({ points }) => boxOfPoints(points)), ...words.map(wordsBox)];
  return boxes.reduce(joinBoxes, boxOfPoints([]));
}

export function isBoxInside(inner: Box2, outer: Box2): boolean {
  return inner.minX >= outer.minX && inner.maxX <= outer.maxX && inner.minY >= outer.minY && inner.maxY <= outer.maxY;
}

/** True when they share more than a border. */
export function doBoxesOverlap(a: Box2, b: Box2): boolean {
  return a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
}

export function growBox({ minX, minY, maxX, maxY }: Box2, by: number): Box2 {
  return { minX: minX - by, minY: minY - by, maxX: maxX + by, maxY: maxY + by };
}

export function moveBox({ minX, minY, maxX, maxY }: Box2, dx: number, dy: number): Box2 {
  return { minX: minX + dx, minY: minY + dy, maxX: maxX + dx, maxY: maxY + dy };
}
