import { boxOfPoints, joinBoxes, type Box2 } from '../../geom/ring.ts';
import { uprightBox, type TurnedBox } from '../../geom/turned-box.ts';
import { placeOfWords } from '../../geom/words-place.ts';
import type { Drawing, Template, Words } from '../../model/template.ts';

/** The box round a line of words, turned with it, mm. */
export const turnedWordsBox = (words: Words): TurnedBox => placeOfWords(words);

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
