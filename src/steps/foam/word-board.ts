import { boxOfPoints, joinBoxes, type Box2 } from '../../geom/ring.ts';
import { SegmentGrid } from '../../geom/segment-grid.ts';
import { doTurnedBoxesMeet, doesSegmentMeetBox, growTurnedBox, uprightBox, type TurnedBox } from '../../geom/turned-box.ts';
import type { Vec2 } from '../../geom/vec.ts';
import { depthInside } from '../../geom/widest-spot.ts';
import type { Stroke, Words } from '../../model/template.ts';
import { FreeRoom } from './free-room.ts';
import type { PaperPiece } from './template-lines.ts';
import { boxAt, wordsInBox, type WordBlock } from './word-block.ts';

/** Distance kept between words and lines, and between words, mm. */
export const CLEARANCE_MM = 0.7;

/** Distances from its place at which words beside a piece are tried, mm, and directions either way from straight out, radians. */
const NEAR_MM = [5, 8, 12, 17, 24];
const FAR_MM = [33, 45, 60, 80, 110, 150];
const LEADER_TURNS = [0, 0.35, -0.35, 0.7, -0.7, 1.05, -1.05, 1.4, -1.4];

/** A leader ends this far off the line it points at, mm, so that it does not read as part of it. */
const LEADER_GAP_MM = 0.4;

/** A place on a line that words beside the piece may point at, and the way off the piece there, length 1. */
export interface Anchor {
  readonly target: Vec2;
  readonly outward: Vec2;
}

/**
 * A template in the making: lines that are there and words that have found a place. Words never cross the line to cut, never touch a line
 * or one another.
 */
export class WordBoard {
  readonly strokes: Stroke[];
  readonly words: Words[] = [];
  readonly #paper: PaperPiece;
  readonly #lines = new SegmentGrid(8);
  readonly #taken: TurnedBox[] = [];

  constructor(paper: PaperPiece, strokes: readonly Stroke[]) {
    this.#paper = paper;
    this.strokes = [...strokes];
    for (const { points, closed } of strokes) this.#lines.addLine(points, closed);
  }

  /** True when a box keeps its distance from all lines and words. */
  isFree(box: TurnedBox): boolean {
    const grown = growTurnedBox(box, CLEARANCE_MM);
    if (this.#taken.some((other) => doTurnedBoxesMeet(grown, other))) return false;
    return !this.#lines.some(uprightBox(grown), (ax, ay, bx, by) => doesSegmentMeetBox(ax, ay, bx, by, grown));
  }

  /** How deep a point lies inside the piece, mm; negative outside. */
  depth(p: Vec2): number {
    return depthInside(this.#paper.cutRings, p.x, p.y);
  }

  /** Writes a block inside the piece if its box is free there. */
  tryInside(block: WordBlock, box: TurnedBox): boolean {
    if (!this.isFree(box) || this.depth(box) <= 0) return false;
    this.write(block, box);
    return true;
  }

  /** Writes a block outside the piece if its box is free there. */
  tryOutside(block: WordBlock, box: TurnedBox): boolean {
    if (!this.isFree(box) || this.depth(box) >= 0) return false;
    this.write(block, box);
    return true;
  }

  write(block: WordBlock, box: TurnedBox): void {
    this.words.push(...wordsInBox(block, box));
    this.#taken.push(box);
  }

  draw(stroke: Stroke): void {
    this.strokes.push(stroke);
    this.#lines.addLine(stroke.points, stroke.closed);
  }

  /** Room inside the piece for boxes turned by an angle, as it is now. */
  room(angleRad: number): FreeRoom {
    return new FreeRoom(this.#paper.cutRings, this.#lines, this.#taken, angleRad, CLEARANCE_MM);
  }

  /** True when a line can be drawn without touching words; with `offLines` also without crossing lines. */
  isClearLine(from: Vec2, to: Vec2, offLines: boolean): boolean {
    if (this.#taken.some((box) => doesSegmentMeetBox(from.x, from.y, to.x, to.y, growTurnedBox(box, CLEARANCE_MM / 2)))) return false;
    if (!offLines) return true;
    const round = boxOfPoints([from.x, from.y, to.x, to.y]);
    return !this.#lines.some(round, (ax, ay, bx, by) => doSegmentsCross(from, to, { x: ax, y: ay }, { x: bx, y: by }));
  }

  /**
   * Writes a block beside the piece with a thin line to what it speaks of: near and without crossing a line if that can be, else near, else
   * farther off, in the end in the free margin round everything, where there is always room.
   * @param anchors places meant, the best first.
   */
  writeBeside(block: WordBlock, anchors: readonly Anchor[]): void {
    for (const [distances, offLines] of [
      [NEAR_MM, true],
      [NEAR_MM, false],
      [FAR_MM, true],
      [FAR_MM, false],
    ] as const) {
      for (const away of distances) {
        for (const turn of LEADER_TURNS) {
          const [c, s] = [Math.cos(turn), Math.sin(turn)];
          for (const { target, outward } of anchors) {
            const way = { x: c * outward.x - s * outward.y, y: s * outward.x + c * outward.y };
            const reach = away + Math.abs(way.x) * (block.widthMm / 2) + Math.abs(way.y) * (block.heightMm / 2);
            const box = boxAt(block, target.x + reach * way.x, target.y + reach * way.y, 0);
            if (this.#tryLeader(block, box, target, offLines)) return;
          }
        }
      }
    }
    this.#writeInMargin(block, anchors[0].target);
  }

  /** Round everything that is drawn and written. */
  box(): Box2 {
    const boxes = [...this.strokes.map(({ points }) => boxOfPoints(points)), ...this.#taken.map(uprightBox)];
    return boxes.reduce(joinBoxes);
  }

  #tryLeader(block: WordBlock, box: TurnedBox, target: Vec2, offLines: boolean): boolean {
    if (!this.isFree(box) || this.depth(box) >= 0) return false;
    const from = nearestOnBox(box, target);
    const length = Math.hypot(from.x - target.x, from.y - target.y);
    if (length <= LEADER_GAP_MM) return false;
    const end = { x: target.x + ((from.x - target.x) * LEADER_GAP_MM) / length, y: target.y + ((from.y - target.y) * LEADER_GAP_MM) / length };
    if (!this.isClearLine(from, end, offLines)) return false;
    this.#drawLeader(block, box, from, end);
    return true;
  }

  #drawLeader(block: WordBlock, box: TurnedBox, from: Vec2, end: Vec2): void {
    this.draw({ role: 'leader', points: Float64Array.of(from.x, from.y, end.x, end.y), closed: false });
    this.write(block, box);
  }

  /** Slots round everything, nearest first; the first whose leader touches no words. */
  #writeInMargin(block: WordBlock, target: Vec2): void {
    const { minX, minY, maxX, maxY } = this.box();
    const [w, h] = [block.widthMm / 2 + 4, block.heightMm / 2 + 4];
    const slots: TurnedBox[] = [];
    const steps = 24;
    for (let k = 0; k <= steps; k += 1) {
      const [x, y] = [minX + ((maxX - minX) * k) / steps, minY + ((maxY - minY) * k) / steps];
      slots.push(boxAt(block, maxX + w, y, 0), boxAt(block, minX - w, y, 0), boxAt(block, x, maxY + h, 0), boxAt(block, x, minY - h, 0));
    }
    const away = (box: TurnedBox): number => Math.hypot(box.x - target.x, box.y - target.y);
    slots.sort((a, b) => away(a) - away(b));
    const clear = slots.find((box) => this.isClearLine(nearestOnBox(box, target), target, false));
    const box = clear ?? slots[0];
    if (clear === undefined) this.write(block, box);
    else this.#drawLeader(block, box, nearestOnBox(box, target), target);
  }
}

/** The point nearest to `p` on an upright box, a little off it. */
function nearestOnBox(box: TurnedBox, p: Vec2): Vec2 {
  const { minX, minY, maxX, maxY } = uprightBox(growTurnedBox(box, LEADER_GAP_MM));
  return { x: Math.min(maxX, Math.max(minX, p.x)), y: Math.min(maxY, Math.max(minY, p.y)) };
}

function doSegmentsCross(a: Vec2, b: Vec2, c: Vec2, d: Vec2): boolean {
  const turn = (p: Vec2, q: Vec2, r: Vec2): number => (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  return turn(a, b, c) * turn(a, b, d) <= 0 && turn(c, d, a) * turn(c, d, b) <= 0;
}
