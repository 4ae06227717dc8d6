import { boxOfPoints, joinBoxes, type Box2 } from '../../geom/ring.ts';
import { textWidthMm } from '../../geom/text-width.ts';
import { uprightBox, type TurnedBox } from '../../geom/turned-box.ts';
import type { Drawing, Template, Words } from '../../model/template.ts';

/** How far letters reach under the baseline and over it, as shares of the capital height (DejaVu Sans: p and É). */
const DESCENT = 0.33;
const ASCENT = 1.1;

/** The box round a line of words, turned with it, mm. */
export function turnedWordsBox({ text, at, angleRad, heightMm, align, wide = 1 }: Words): TurnedBox {
  const halfWidth = (wide * textWidthMm(text, heightMm)) / 2;
  const along = { left: halfWidth, centre: 0, right: -halfWidth }[align];
  const up = ((ASCENT - DESCENT) / 2) * heightMm;
  const [c, s] = [Math.cos(angleRad), Math.sin(angleRad)];
  return {
    x: at.x + c * along - s * up,
    y: at.y + s * along + c * up,
    halfWidth,
    halfHeight: ((ASCENT + DESCENT) / 2) * heightMm,
    angleRad,
  };
}

/** The upright box round a line of words, mm. */
export function wordsBox(words: Words): Box2 {
  return uprightBox(turnedWordsBox(words));
}

/** The upright box round all lines and words of a drawing, mm; inside out when there are none. */
export function drawnBox({ strokes, words }: Drawing): Box2 {
  const boxes = [...strokes.map(({ points }) => boxOfPoints(points)), ...words.map(wordsBox)];
  return boxes.reduce(joinBoxes, boxOfPoints([]));
}

export function isBoxInside(inner: Box2, outer: Box2): boolean {
  return inner.minX >= outer.minX && inner.maxX <= outer.maxX && inner.minY >= outer.minY && inner.maxY <= outer.maxY;
}

/** Round everything drawn, template space: the record's box, or more where words stick out of it. */
export function fullBox({ box, drawing }: Template): Box2 {
  return joinBoxes(box, drawnBox(drawing));
}
