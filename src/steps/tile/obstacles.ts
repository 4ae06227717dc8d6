import { SegmentGrid } from '../../geom/segment-grid.ts';
import {
  doesSegmentMeetBox,
  doTurnedBoxesMeet,
  growTurnedBox,
  uprightBox,
  type TurnedBox,
} from '../../geom/turned-box.ts';
import type { Vec2 } from '../../geom/vec.ts';
import type { Stroke } from '../../model/template.ts';

/** White kept round a line of words, mm: less and letters run into lines at arm's length [J]. */
const CLEAR_MM = 0.6;

/** Lines and words that other words should keep off. */
export class Obstacles {
  readonly #lines = new SegmentGrid(10);
  readonly #boxes: TurnedBox[] = [];

  addStrokes(strokes: readonly Stroke[]): void {
    for (const { points, closed } of strokes) this.#lines.addLine(points, closed);
  }

  addBox(box: TurnedBox): void {
    this.#boxes.push(box);
  }

  /** True when nothing comes nearer to the box than the white round words. */
  isFree(box: TurnedBox): boolean {
    const wide = growTurnedBox(box, CLEAR_MM);
    for (const other of this.#boxes) if (areNear(wide, other) && doTurnedBoxesMeet(wide, other)) return false;
    return !this.#lines.some(uprightBox(wide), (ax, ay, bx, by) => doesSegmentMeetBox(ax, ay, bx, by, wide));
  }

  /** True when a thin line between two points touches no words. */
  isOpen(from: Vec2, to: Vec2): boolean {
    for (const box of this.#boxes) if (doesSegmentMeetBox(from.x, from.y, to.x, to.y, box)) return false;
    return true;
  }
}

function areNear(a: TurnedBox, b: TurnedBox): boolean {
  const reach = a.halfWidth + a.halfHeight + b.halfWidth + b.halfHeight;
  return Math.abs(a.x - b.x) < reach && Math.abs(a.y - b.y) < reach;
}
