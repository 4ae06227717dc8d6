import type { Vec2 } from '../../geom/vec.ts';
import { parabola } from './trace-corners.ts';

/** A straight line: a place on it and its direction, of length 1, the way the places run. */
export interface StraightLine {
  readonly at: Vec2;
  readonly along: Vec2;
}

/** Places from `first` to `last` of an open stretch that lie on a straight line, or on a curve where `line` is null. */
export interface Part {
  readonly first: number;
  readonly last: number;
  readonly line: StraightLine | null;
}

/**
 * Takes an open stretch of places apart into straight and curved parts. A part is straight where no place is farther from the line of least squares than
 * `limit`, and it is so long that a circle with as little rise over it would be wider than four times the whole shape; the whole stretch between two
 * corners also where it is shorter.
 * @param places  packed x y.
 * @param size    of the whole shape, corner to corner, in the unit of the places.
 */
export function straightParts(places: Float64Array, limit: number, size: number, isBetweenCorners: boolean): Part[] {
  const n = places.length / 2;
  if (isBetweenCorners && n >= 2) {
    const whole = lineThrough(places, 0, n - 1);
    if (isStraight(places, 0, n - 1, whole, limit)) return [{ first: 0, last: n - 1, line: whole }];
  }
  const least = 2 * Math.sqrt(8 * limit * size);
  const parts: Part[] = [];
  let open = 0;
  for (let i = 0; i < n - 2;) {
    let last = reaching(places, i, least);
    let line = last < 0 ? null : lineThrough(places, i, last);
    if (line === null || !isStraight(places, i, last, line, limit)) {
      i += 1;
      continue;
    }
    // As far as it goes: steps that double, then halve.
    for (let step = Math.max(1, last - i), isGrowing = true; step >= 1;) {
      const next = Math.min(n - 1, last + step);
      const longer = next === last ? null : lineThrough(places, i, next);
      if (longer !== null && isStraight(places, i, next, longer, limit)) {
        [last, line] = [next, longer];
        if (isGrowing) step *= 2;
      } else {
        isGrowing = false;
        step = Math.floor(step / 2);
      }
    }
    if (i > open) parts.push({ first: open, last: i, line: null });
    parts.push({ first: i, last, line });
    open = last;
    i = last;
  }
  if (open < n - 1) parts.push({ first: open, last: n - 1, line: null });
  return parts;
}

/** The first place at least so far away; -1 where there is none. */
function reaching(places: Float64Array, i: number, way: number): number {
  for (let j = i + 1; 2 * j < places.length; j += 1)
    if (Math.hypot(places[2 * j] - places[2 * i], places[2 * j + 1] - places[2 * i + 1]) >= way) return j;
  return -1;
}

/** The line with least squared distances from places (Pearson 1901). */
export function lineThrough(places: Float64Array, first: number, last: number): StraightLine {
  const n = last - first + 1;
  let [cx, cy] = [0, 0];
  for (let i = first; i <= last; i += 1) [cx, cy] = [cx + places[2 * i] / n, cy + places[2 * i + 1] / n];
  let [xx, xy, yy] = [0, 0, 0];
  for (let i = first; i <= last; i += 1) {
    const [dx, dy] = [places[2 * i] - cx, places[2 * i + 1] - cy];
    [xx, xy, yy] = [xx + dx * dx, xy + dx * dy, yy + dy * dy];
  }
  const angle = Math.atan2(2 * xy, xx - yy) / 2;
  const [x, y] = [Math.cos(angle), Math.sin(angle)];
  const isForward =
    x * (places[2 * last] - places[2 * first]) + y * (places[2 * last + 1] - places[2 * first + 1]) >= 0;
  return { at: { x: cx, y: cy }, along: isForward ? { x, y } : { x: -x, y: -y } };
}

function isStraight(
  places: Float64Array,
  first: number,
  last: number,
  { at, along }: StraightLine,
  limit: number,
): boolean {
  for (let i = first; i <= last; i += 1)
    if (Math.abs((places[2 * i] - at.x) * along.y - (places[2 * i + 1] - at.y) * along.x) > limit) return false;
  return true;
}

/** The foot of a place on a line. */
export function footOn({ at, along }: StraightLine, x: number, y: number): Vec2 {
  const way = (x - at.x) * along.x + (y - at.y) * along.y;
  return { x: at.x + way * along.x, y: at.y + way * along.y };
}

/** Where two lines meet; null where they are nearly parallel. */
export function meetingOf(a: StraightLine, b: StraightLine): Vec2 | null {
  const cross = a.along.x * b.along.y - a.along.y * b.along.x;
  if (Math.abs(cross) < 0.02) return null;
  const way = ((b.at.x - a.at.x) * b.along.y - (b.at.y - a.at.y) * b.along.x) / cross;
  return { x: a.at.x + way * a.along.x, y: a.at.y + way * a.along.y };
}

/** Windows that a place is evened out in, places on either side, widest first. */
const WINDOWS = [32, 16, 8, 4, 2] as const;

/** Places of a curve evened out, and the direction of the curve at each, of length 1. */
export interface EvenPlaces {
  readonly places: Float64Array;
  readonly directions: Float64Array;
}

/**
 * Puts each place onto the parabola of least squares through it and as many on either side as lie on one within `noise`, root mean square. The ends of an
 * open stretch look to one side.
 */
export function evened(places: Float64Array, noise: number, isClosed: boolean): EvenPlaces {
  const n = places.length / 2;
  const [made, directions] = [Float64Array.from(places), new Float64Array(2 * n)];
  for (let i = 0; i < n; i += 1) {
    const found = evenedAt(places, i, noise, isClosed);
    if (found !== null) [made[2 * i], made[2 * i + 1]] = [found.at.x, found.at.y];
    const { x, y } = found?.along ?? stepAt(places, i, isClosed);
    [directions[2 * i], directions[2 * i + 1]] = [x, y];
  }
  return { places: made, directions };
}

function evenedAt(places: Float64Array, i: number, noise: number, isClosed: boolean): StraightLine | null {
  const n = places.length / 2;
  for (const window of WINDOWS) {
    const before = isClosed ? window : Math.min(window, i);
    const after = isClosed ? window : Math.min(window, n - 1 - i);
    if (before + after < 4 || before + after + 1 > n) continue;
    const [s, x, y]: [number[], number[], number[]] = [[], [], []];
    let way = 0;
    let centre = 0;
    for (let k = -before; k <= after; k += 1) {
      const j = (i + k + n) % n;
      const last = (j - 1 + n) % n;
      if (k > -before) way += Math.hypot(places[2 * j] - places[2 * last], places[2 * j + 1] - places[2 * last + 1]);
      if (k === 0) centre = way;
      s.push(way);
      x.push(places[2 * j]);
      y.push(places[2 * j + 1]);
    }
    const ways = s.map((one) => one - centre);
    const [a, b] = [parabola(ways, x, ways.length), parabola(ways, y, ways.length)];
    if (a === null || b === null) return null;
    const isLast = window === WINDOWS[WINDOWS.length - 1];
    if (!isLast && Math.sqrt((a.squares + b.squares) / Math.max(1, 2 * s.length - 6)) > noise) continue;
    const length = Math.hypot(a.slope, b.slope);
    if (length > 0) return { at: { x: a.value, y: b.value }, along: { x: a.slope / length, y: b.slope / length } };
  }
  return null;
}

function stepAt(places: Float64Array, i: number, isClosed: boolean): Vec2 {
  const n = places.length / 2;
  const [a, b] = isClosed ? [(i - 1 + n) % n, (i + 1) % n] : [Math.max(0, i - 1), Math.min(n - 1, i + 1)];
  const [dx, dy] = [places[2 * b] - places[2 * a], places[2 * b + 1] - places[2 * a + 1]];
  const length = Math.hypot(dx, dy);
  return length > 0 ? { x: dx / length, y: dy / length } : { x: 1, y: 0 };
}
