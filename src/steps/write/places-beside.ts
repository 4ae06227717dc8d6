import { boxOfPoints, type Ring } from '../../geom/ring.ts';
import { SegmentGrid } from '../../geom/segment-grid.ts';
import {
  doesSegmentMeetBox,
  doTurnedBoxesMeet,
  growTurnedBox,
  uprightBox,
  type TurnedBox,
} from '../../geom/turned-box.ts';
import type { Vec2 } from '../../geom/vec.ts';
import { depthInside } from '../../geom/widest-spot.ts';
import { placeOfWords } from '../../geom/words-place.ts';
import { SMALLEST_WORDS_MM } from '../../model/line-style.ts';
import type { Drawing, Stroke, Words } from '../../model/template.ts';

/** White round a number, and between its leader and what it points at, mm. */
const CLEAR_MM = 0.7;
const GAP_MM = 0.4;

/** How far from its piece a number is looked for a place, mm, and the ways off it, radians from straight out. */
const AWAY_MM = [3, 4.5, 6, 9, 13, 18, 25, 35, 50];
const WAYS_RAD = [0, 0.5, -0.5, 1, -1];

/** Places along an outline that a leader may point at lie so far apart, mm. */
const STEP_MM = 4;

/** What lies on a sheet, and what is still free between the pieces. */
export class PlacesBeside {
  readonly #lines = new SegmentGrid(10);
  readonly #outlines: readonly { readonly ring: Ring; readonly box: ReturnType<typeof boxOfPoints> }[];
  readonly #boxes: TurnedBox[];
  readonly #sheet: Ring;

  /** @param strokes  all lines; the first is the edge of the sheet. @param drawings  of all pieces. */
  constructor(strokes: readonly Stroke[], drawings: readonly Drawing[]) {
    for (const { points, closed } of strokes) this.#lines.addLine(points, closed);
    this.#sheet = strokes[0].points;
    // Of a piece both edges count: what lies within either is foam that is cut.
    this.#outlines = drawings
      .flatMap((drawing) => drawing.strokes)
      .filter(({ role, closed }) => closed && (role === 'cut' || role === 'bevel'))
      .map(({ points: ring }) => ({ ring, box: boxOfPoints(ring) }));
    this.#boxes = drawings.flatMap(({ words }) => words.map((line) => placeOfWords(line)));
  }

  /** Takes the nearest free place beside a piece, with a leader to it that crosses nothing; null where there is none. */
  take(text: string, own: readonly Stroke[]): { readonly words: Words; readonly leader: Stroke } | null {
    const ring = own.find(({ role, closed }) => role === 'cut' && closed)?.points;
    if (ring === undefined) return null;
    const targets = placesAlong(ring);
    for (const away of AWAY_MM) {
      for (const { at, outward } of targets) {
        for (const turn of WAYS_RAD) {
          const way = turned(outward, turn);
          const words = wordsAt(text, { x: at.x + away * way.x, y: at.y + away * way.y });
          const box = placeOfWords(words);
          if (!this.#isFree(box)) continue;
          const [from, to] = [
            nearestOn(growTurnedBox(box, GAP_MM), at),
            { x: at.x + GAP_MM * way.x, y: at.y + GAP_MM * way.y },
          ];
          if (!this.#isOpen(from, to)) continue;
          const leader: Stroke = { role: 'leader', points: Float64Array.of(from.x, from.y, to.x, to.y), closed: false };
          this.#boxes.push(box);
          this.#lines.addLine(leader.points, false);
          return { words, leader };
        }
      }
    }
    return null;
  }

  #isFree(box: TurnedBox): boolean {
    const grown = growTurnedBox(box, CLEAR_MM);
    if (this.#boxes.some((other) => doTurnedBoxesMeet(grown, other))) return false;
    if (this.#lines.some(uprightBox(grown), (ax, ay, bx, by) => doesSegmentMeetBox(ax, ay, bx, by, grown)))
      return false;
    if (depthInside([this.#sheet], box.x, box.y) <= 0) return false;
    return !this.#outlines.some(
      ({ ring, box: { minX, minY, maxX, maxY } }) =>
        box.x > minX && box.x < maxX && box.y > minY && box.y < maxY && depthInside([ring], box.x, box.y) > 0,
    );
  }

  #isOpen(from: Vec2, to: Vec2): boolean {
    if (this.#boxes.some((box) => doesSegmentMeetBox(from.x, from.y, to.x, to.y, growTurnedBox(box, GAP_MM / 2))))
      return false;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    if (length === 0) return true;
    // A thin box for the line, so that it does not run along another one either.
    const line: TurnedBox = {
      x: (from.x + to.x) / 2,
      y: (from.y + to.y) / 2,
      halfWidth: length / 2,
      halfHeight: GAP_MM / 2,
      angleRad: Math.atan2(to.y - from.y, to.x - from.x),
    };
    return !this.#lines.some(uprightBox(line), (ax, ay, bx, by) => doesSegmentMeetBox(ax, ay, bx, by, line));
  }
}

const wordsAt = (text: string, { x, y }: Vec2): Words => ({
  text,
  at: { x, y: y - SMALLEST_WORDS_MM / 2 },
  angleRad: 0,
  heightMm: SMALLEST_WORDS_MM,
  align: 'centre',
  bold: true,
});

const turned = ({ x, y }: Vec2, by: number): Vec2 => ({
  x: Math.cos(by) * x - Math.sin(by) * y,
  y: Math.sin(by) * x + Math.cos(by) * y,
});

/** Places along a ring, and the way off it there. Turned-over rings run the other way round. */
function placesAlong(ring: Ring): readonly { readonly at: Vec2; readonly outward: Vec2 }[] {
  const places: { at: Vec2; outward: Vec2 }[] = [];
  const count = ring.length / 2;
  let twice = 0;
  for (let i = 0; i < count; i += 1) {
    const j = (i + 1) % count;
    twice += ring[2 * i] * ring[2 * j + 1] - ring[2 * j] * ring[2 * i + 1];
  }
  const side = twice > 0 ? 1 : -1;
  for (let i = 0; i < count; i += 1) {
    const j = (i + 1) % count;
    const [ax, ay, bx, by] = [ring[2 * i], ring[2 * i + 1], ring[2 * j], ring[2 * j + 1]];
    const length = Math.hypot(bx - ax, by - ay);
    if (length === 0) continue;
    const outward = { x: (side * (by - ay)) / length, y: (side * (ax - bx)) / length };
    const parts = Math.ceil(length / STEP_MM);
    for (let k = 0; k < parts; k += 1) {
      const t = (k + 0.5) / parts;
      places.push({ at: { x: ax + t * (bx - ax), y: ay + t * (by - ay) }, outward });
    }
  }
  return places;
}

/** The point of a level box nearest to a point. */
const nearestOn = ({ x, y, halfWidth, halfHeight }: TurnedBox, p: Vec2): Vec2 => ({
  x: Math.min(x + halfWidth, Math.max(x - halfWidth, p.x)),
  y: Math.min(y + halfHeight, Math.max(y - halfHeight, p.y)),
});
