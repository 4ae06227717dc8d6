import { segmentInBox } from '../../geom/clip-to-box.ts';
import { boxOfPoints, type Box2 } from '../../geom/ring.ts';
import type { Stroke } from '../../model/template.ts';
import { doBoxesOverlap, growBox } from './words-box.ts';

/** White kept round a line of words, mm: less and letters run into lines at arm's length [J]. */
const CLEAR_MM = 0.6;

/** Lines and words that other words should keep off. */
export class Obstacles {
  readonly #lines: { readonly stroke: Stroke; readonly box: Box2 }[] = [];
  readonly #boxes: Box2[] = [];

  addStrokes(strokes: readonly Stroke[]): void {
    for (const stroke of strokes) this.#lines.push({ stroke, box: boxOfPoints(stroke.points) });
  }

  addBox(box: Box2): void {
    this.#boxes.push(box);
  }

  /** True when nothing comes nearer to the box than the white round words. */
  isFree(box: Box2): boolean {
    const wide = growBox(box, CLEAR_MM);
    if (this.#boxes.some((other) => doBoxesOverlap(wide, other))) return false;
    return !this.#lines.some((line) => doBoxesTouch(wide, line.box) && doesStrokeCross(line.stroke, wide));
  }

  /** The same, but only with what lies in `area`: quick to ask many times about one place. */
  within(area: Box2): Obstacles {
    const near = new Obstacles();
    near.#lines.push(...this.#lines.filter((line) => doBoxesTouch(area, line.box)));
    near.#boxes.push(...this.#boxes.filter((box) => doBoxesOverlap(area, box)));
    return near;
  }
}

function doesStrokeCross({ points, closed }: Stroke, box: Box2): boolean {
  const count = points.length / 2;
  for (let i = 0; i < (closed ? count : count - 1); i += 1) {
    const j = (i + 1) % count;
    if (segmentInBox(points[2 * i], points[2 * i + 1], points[2 * j], points[2 * j + 1], box) !== null) return true;
  }
  return false;
}

/** Closed boxes: upright lines have boxes without breadth. */
function doBoxesTouch(a: Box2, b: Box2): boolean {
  return a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;
}
