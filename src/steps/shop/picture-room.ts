import { SegmentGrid } from '../../geom/segment-grid.ts';
import {
  doesSegmentMeetBox,
  doTurnedBoxesMeet,
  growTurnedBox,
  uprightBox,
  type TurnedBox,
} from '../../geom/turned-box.ts';
import { placeOfWords } from '../../geom/words-place.ts';
import type { Stroke, Words } from '../../model/template.ts';

/** White round words, mm: bold letters reach a tenth of a millimetre beyond their box. */
const CLEAR_MM = 0.5;

/** White between two words side by side, so that they are not read as one, mm; and where there is no room for so much. */
export const APART_MM = 2.2;
export const LEAST_APART_MM = 0.8;

/** White between words and the edge of the picture, mm. */
const EDGE_MM = 1;

/** What stands in a picture that words keep off: filled shapes and other words. Thin lines break off under words. */
export class PictureRoom {
  readonly #filled = new SegmentGrid(5);
  readonly #boxes: TurnedBox[] = [];
  readonly #widthMm: number;
  readonly #heightMm: number;

  constructor({ widthMm, heightMm }: { readonly widthMm: number; readonly heightMm: number }) {
    this.#widthMm = widthMm;
    this.#heightMm = heightMm;
  }

  /** Shapes no larger than words: one that words stand in whole would not be seen. */
  addFilled(strokes: readonly Stroke[]): void {
    for (const { filled, points } of strokes) if (filled === true) this.#filled.addLine(points, true);
  }

  /** @returns whether the words had room, which they then take. */
  take(words: Words, apartMm: number = APART_MM): boolean {
    const box = placeOfWords(words);
    if (!this.#isFree(box, apartMm)) return false;
    this.#boxes.push(box);
    return true;
  }

  #isFree(box: TurnedBox, apartMm: number): boolean {
    const apart = { ...box, halfWidth: box.halfWidth + apartMm, halfHeight: box.halfHeight + CLEAR_MM };
    const wide = growTurnedBox(box, CLEAR_MM);
    const { minX, minY, maxX, maxY } = uprightBox(wide);
    const isInside =
      minX >= EDGE_MM && minY >= EDGE_MM && maxX <= this.#widthMm - EDGE_MM && maxY <= this.#heightMm - EDGE_MM;
    if (!isInside || this.#boxes.some((other) => doTurnedBoxesMeet(apart, other))) return false;
    return !this.#filled.some({ minX, minY, maxX, maxY }, (ax, ay, bx, by) => doesSegmentMeetBox(ax, ay, bx, by, wide));
  }
}
