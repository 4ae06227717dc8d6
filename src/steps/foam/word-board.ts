import { boxOfPoints, joinBoxes, type Box2 } from '../../geom/ring.ts';
import { SegmentGrid } from '../../geom/segment-grid.ts';
import {
  doTurnedBoxesMeet,
  doesSegmentMeetBox,
  growTurnedBox,
  uprightBox,
  type TurnedBox,
} from '../../geom/turned-box.ts';
import type { Vec2 } from '../../geom/vec.ts';
import { depthInside } from '../../geom/widest-spot.ts';
import type { Stroke, Words } from '../../model/template.ts';
import { FreeRoom } from './free-room.ts';
import type { PaperPiece } from './template-lines.ts';
import { boxAt, wordsInBox, type WordBlock } from './word-block.ts';

/** Distance kept between words and lines, and between words, mm. */
export const CLEARANCE_MM = 0.7;

/** Beside a piece words keep off others by so much more, along their lines and across, so that two do not read as one sentence, mm. */
const APART_MM = { along: 2.5, across: 1 } as const;

/**
 * Distances from its place at which words beside a piece are tried, mm, group by group: in each first without crossing a line, then crossing;
 * and directions either way from straight out, radians.
 */
const LEADER_MM = [
  [5, 8, 12],
  [17, 24],
  [33, 45],
  [60, 80],
  [110, 150],
];
const LEADER_TURNS = [0, 0.25, -0.25, 0.5, -0.5, 0.75, -0.75, 1, -1, 1.25, -1.25, 1.5, -1.5, 1.8, -1.8, 2.2, -2.2];

/** A leader ends this far off the line it points at, mm, so that it does not read as part of it. */
const LEADER_GAP_MM = 0.4;

/** A place on a line that words beside the piece may point at, and the way off the piece there, length 1. */
export interface Anchor {
  readonly target: Vec2;
  readonly outward: Vec2;
  /** How far inside the piece the place lies, mm; left out on its edge. */
  readonly insideMm?: number;
}

/**
 * A template in the making: lines that are there and words that have found a place. Words never cross the line to cut, never touch a line
 * or one another.
 */
export class WordBoard {
  readonly strokes: Stroke[];
  readonly words: Words[] = [];
  readonly #paper: Pick<PaperPiece, 'cutRings'>;
  readonly #lines = new SegmentGrid(8);
  readonly #taken: TurnedBox[] = [];
  readonly #bends = new Map<Vec2, readonly Bend[]>();

  constructor(paper: Pick<PaperPiece, 'cutRings'>, strokes: readonly Stroke[]) {
    this.#paper = paper;
    this.strokes = [...strokes];
    for (const { points, closed } of strokes) this.#lines.addLine(points, closed);
  }

  /** True when a box keeps its distance from all lines and words. */
  isFree(box: TurnedBox): boolean {
    const grown = growTurnedBox(box, CLEARANCE_MM);
    if (this.#taken.some((other) => areNear(grown, other) && doTurnedBoxesMeet(grown, other))) return false;
    return !this.#lines.some(uprightBox(grown), (ax, ay, bx, by) => doesSegmentMeetBox(ax, ay, bx, by, grown));
  }

  /** True when a box beside the piece stands far enough from all words to be read by itself. */
  #isApart(box: TurnedBox): boolean {
    const halfWidth = box.halfWidth + APART_MM.along;
    const halfHeight = box.halfHeight + APART_MM.across;
    const grown = { ...box, halfWidth, halfHeight };
    return !this.#taken.some((other) => areNear(grown, other) && doTurnedBoxesMeet(grown, other));
  }

  /** How deep a point lies inside the piece, mm; negative outside. */
  depth(p: Vec2): number {
    return depthInside(this.#paper.cutRings, p.x, p.y);
  }

  /** Writes a block inside the piece if its box is free there and its middle at least so deep inside, mm. */
  tryInside(block: WordBlock, box: TurnedBox, leastDepthMm = 0): boolean {
    if (!this.isFree(box) || this.depth(box) <= leastDepthMm) return false;
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
    this.#bends.clear();
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
    const round = boxOfPoints([from.x, from.y, to.x, to.y]);
    const isOn = (box: TurnedBox): boolean => {
      const reach = Math.hypot(box.halfWidth, box.halfHeight) + CLEARANCE_MM;
      if (
        box.x + reach < round.minX ||
        box.x - reach > round.maxX ||
        box.y + reach < round.minY ||
        box.y - reach > round.maxY
      )
        return false;
      return doesSegmentMeetBox(from.x, from.y, to.x, to.y, growTurnedBox(box, CLEARANCE_MM / 2));
    };
    if (this.#taken.some(isOn)) return false;
    if (!offLines) return true;
    return !this.#lines.some(round, (ax, ay, bx, by) => doSegmentsCross(from, to, { x: ax, y: ay }, { x: bx, y: by }));
  }

  /**
   * Writes a block beside the piece with a thin line to what it speaks of, as near as can be, off other lines if that can be; in the end in the
   * free margin round everything, where there is always room.
   * @param anchors places meant, the best first.
   */
  writeBeside(block: WordBlock, anchors: readonly Anchor[]): void {
    for (const distances of LEADER_MM) {
      for (const offLines of [true, false]) {
        for (const away of distances) if (this.#tryAnchors(block, anchors, away, offLines)) return;
      }
    }
    this.#writeInMargin(block, anchors[0].target);
  }

  /** Round everything that is drawn and written. */
  box(): Box2 {
    const boxes = [...this.strokes.map(({ points }) => boxOfPoints(points)), ...this.#taken.map(uprightBox)];
    return boxes.reduce(joinBoxes);
  }

  #tryAnchors(block: WordBlock, anchors: readonly Anchor[], away: number, offLines: boolean): boolean {
    for (const turn of LEADER_TURNS) {
      const [c, s] = [Math.cos(turn), Math.sin(turn)];
      for (const { target, outward, insideMm = 0 } of anchors) {
        const way = { x: c * outward.x - s * outward.y, y: s * outward.x + c * outward.y };
        const reach = insideMm + away + Math.abs(way.x) * (block.widthMm / 2) + Math.abs(way.y) * (block.heightMm / 2);
        const box = boxAt(block, target.x + reach * way.x, target.y + reach * way.y, 0);
        if (this.#tryLeader(block, box, target, offLines)) return true;
      }
    }
    return false;
  }

  #tryLeader(block: WordBlock, box: TurnedBox, target: Vec2, offLines: boolean): boolean {
    if (!this.isFree(box) || !this.#isApart(box) || this.depth(box) >= 0) return false;
    const from = nearestOnBox(box, target);
    const length = Math.hypot(from.x - target.x, from.y - target.y);
    if (length <= LEADER_GAP_MM) return false;
    const end = {
      x: target.x + ((from.x - target.x) * LEADER_GAP_MM) / length,
      y: target.y + ((from.y - target.y) * LEADER_GAP_MM) / length,
    };
    const path = this.isClearLine(from, end, offLines) ? [from, end] : offLines ? null : this.#bentPath(box, target);
    if (path === null) return false;
    this.#drawLeader(block, box, path);
    return true;
  }

  /** A leader with one bend that touches no words, the shortest of those tried, or null. */
  #bentPath(box: TurnedBox, target: Vec2): readonly Vec2[] | null {
    let best: readonly Vec2[] | null = null;
    let least = Infinity;
    for (const { bend, end, reach } of this.#bendsFrom(target)) {
      const from = nearestOnBox(box, bend);
      const length = reach + Math.hypot(from.x - bend.x, from.y - bend.y);
      if (
        length >= least ||
        doesSegmentMeetBox(end.x, end.y, bend.x, bend.y, box) ||
        !this.isClearLine(bend, from, false)
      )
        continue;
      [least, best] = [length, [from, bend, end]];
    }
    return best;
  }

  /** Bends that can be reached from a place without touching words; kept until the next words are written. */
  #bendsFrom(target: Vec2): readonly Bend[] {
    const known = this.#bends.get(target);
    if (known !== undefined) return known;
    const bends: Bend[] = [];
    for (const reach of BEND_MM) {
      for (let k = 0; k < BEND_WAYS; k += 1) {
        const way = { x: Math.cos((2 * Math.PI * k) / BEND_WAYS), y: Math.sin((2 * Math.PI * k) / BEND_WAYS) };
        const bend = { x: target.x + reach * way.x, y: target.y + reach * way.y };
        const end = { x: target.x + LEADER_GAP_MM * way.x, y: target.y + LEADER_GAP_MM * way.y };
        if (this.isClearLine(end, bend, false)) bends.push({ bend, end, reach });
      }
    }
    this.#bends.set(target, bends);
    return bends;
  }

  #drawLeader(block: WordBlock, box: TurnedBox, path: readonly Vec2[]): void {
    this.draw({ role: 'leader', points: Float64Array.from(path.flatMap(({ x, y }) => [x, y])), closed: false });
    this.write(block, box);
  }

  /** Slots round everything, nearest first: the first whose leader, straight or bent, touches no words. */
  #writeInMargin(block: WordBlock, target: Vec2): void {
    const { minX, minY, maxX, maxY } = this.box();
    const [w, h] = [block.widthMm / 2 + MARGIN_GAP_MM, block.heightMm / 2 + MARGIN_GAP_MM];
    const slots: TurnedBox[] = [];
    for (let k = 0; k <= MARGIN_SLOTS; k += 1) {
      const [x, y] = [minX + ((maxX - minX) * k) / MARGIN_SLOTS, minY + ((maxY - minY) * k) / MARGIN_SLOTS];
      slots.push(
        boxAt(block, maxX + w, y, 0),
        boxAt(block, minX - w, y, 0),
        boxAt(block, x, maxY + h, 0),
        boxAt(block, x, minY - h, 0),
      );
    }
    const away = (box: TurnedBox): number => Math.hypot(box.x - target.x, box.y - target.y);
    slots.sort((a, b) => away(a) - away(b));
    for (const box of slots) {
      const from = nearestOnBox(box, target);
      const path = this.isClearLine(from, target, false) ? [from, target] : this.#bentPath(box, target);
      if (path === null) continue;
      this.#drawLeader(block, box, path);
      return;
    }
    // Walled in by words on all sides: the words still name what they speak of by letter or number.
    this.write(block, slots[0]);
  }
}

/** A leader's bend, and its end at the place it points at. */
interface Bend {
  readonly bend: Vec2;
  readonly end: Vec2;
  readonly reach: number;
}

/** Bends of a leader: how far from its place and in how many directions. */
const BEND_MM = [2.5, 5, 9, 14];
const BEND_WAYS = 16;

/** Slots on each side of everything drawn, and their distance from it, mm. */
const MARGIN_SLOTS = 24;
const MARGIN_GAP_MM = 4;

/** False when two boxes lie so far apart that not even circles round them touch. */
function areNear(a: TurnedBox, b: TurnedBox): boolean {
  const reach = Math.hypot(a.halfWidth, a.halfHeight) + Math.hypot(b.halfWidth, b.halfHeight);
  return (a.x - b.x) ** 2 + (a.y - b.y) ** 2 < reach * reach;
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
