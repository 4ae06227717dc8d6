import type { Vec2 } from './vec.ts';

/** A cubic Bezier curve by its four points. */
export interface FittedCubic {
  readonly from: Vec2;
  readonly handles: readonly [Vec2, Vec2];
  readonly to: Vec2;
}

/** Rounds of putting parameters right and fitting again. */
const MOST_ROUNDS = 60;
/** A round that leaves more than this share of the distance is the last: over the limit, and below it. */
const SLOWEST = 0.997;
const ENOUGH = 0.98;
/** A fit so many times over the limit after the first rounds is not worth more. */
const FIRST_ROUNDS = 6;
const HOPELESS = 16;
const MOST_DEPTH = 40;

/**
 * Cubic curves along a line of points (Schneider 1990, "An algorithm for automatically fitting digitized curves"): for each stretch the two handle lengths by
 * least squares along given tangents, parameters put right by Newton's steps, and, where some point stays farther than the limit, two curves that meet
 * smoothly at the worst place in its place.
 * @param points  packed x y, two places or more.
 * @param start   direction at the first point, of length 1, or null where the line itself tells it; `end` at the last, pointing back.
 * @param directionAt  direction of the line at a point within, of length 1, where curves may meet; else of its neighbours.
 * @param limit   greatest distance of a point from the curve, in the unit of the points, > 0; two points alone are joined straight.
 */
export function fitCubics(
  points: ArrayLike<number>,
  start: Vec2 | null,
  end: Vec2 | null,
  limit: number,
  directionAt?: (i: number) => Vec2,
): FittedCubic[] {
  const last = points.length / 2 - 1;
  const made: FittedCubic[] = [];
  fitPart(
    { points, limit, directionAt: directionAt ?? ((i) => middleTangent(points, i, last)) },
    0,
    last,
    start ?? endTangent(points, 0, last, 1),
    end ?? endTangent(points, last, 0, -1),
    made,
    0,
  );
  return made;
}

const at = (points: ArrayLike<number>, i: number): Vec2 => ({ x: points[2 * i], y: points[2 * i + 1] });

function unit(x: number, y: number): Vec2 {
  const length = Math.hypot(x, y);
  return length > 0 ? { x: x / length, y: y / length } : { x: 1, y: 0 };
}

/** Places that settle a tangent. */
const TANGENT_PLACES = 4;

/** Direction from a place into the line: of the parabola through it that is nearest to the next few. */
function endTangent(points: ArrayLike<number>, i: number, last: number, step: number): Vec2 {
  const p = at(points, i);
  const count = Math.min(TANGENT_PLACES, Math.abs(last - i));
  if (count < 3) {
    const q = at(points, i + step * Math.max(1, count));
    return unit(q.x - p.x, q.y - p.y);
  }
  // x = b s + c s² over the way s.
  let [s, s2, s3, s4, sx, sy, s2x, s2y] = [0, 0, 0, 0, 0, 0, 0, 0];
  let before = p;
  for (let k = 1; k <= count; k += 1) {
    const q = at(points, i + step * k);
    s += Math.hypot(q.x - before.x, q.y - before.y);
    before = q;
    const [dx, dy] = [q.x - p.x, q.y - p.y];
    [s2, s3, s4] = [s2 + s * s, s3 + s ** 3, s4 + s ** 4];
    [sx, sy, s2x, s2y] = [sx + s * dx, sy + s * dy, s2x + s * s * dx, s2y + s * s * dy];
  }
  return unit(sx * s4 - s2x * s3, sy * s4 - s2y * s3);
}

/** Direction of the line at a place within it. */
function middleTangent(points: ArrayLike<number>, i: number, last: number): Vec2 {
  const [a, b] = [at(points, Math.max(0, i - 3)), at(points, Math.min(last, i + 3))];
  return unit(b.x - a.x, b.y - a.y);
}

interface Line {
  readonly points: ArrayLike<number>;
  readonly limit: number;
  readonly directionAt: (i: number) => Vec2;
}

function fitPart(
  line: Line,
  first: number,
  last: number,
  start: Vec2,
  end: Vec2,
  made: FittedCubic[],
  depth: number,
): void {
  const { points, limit } = line;
  const [from, to] = [at(points, first), at(points, last)];
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  if (last - first < 2) {
    const third = chord / 3;
    made.push(handled(from, to, start, end, third, third));
    return;
  }
  const shares = chordShares(points, first, last);
  let curve = leastCurve(points, first, last, shares, start, end);
  let worst = farthest(points, first, shares, curve);
  let latest = curve;
  // Rounds go on below the limit: a better fit costs nothing.
  for (let round = 0; round < MOST_ROUNDS && (round < FIRST_ROUNDS || worst.distance < HOPELESS * limit); round += 1) {
    putRight(points, first, shares, latest);
    const next = leastCurve(points, first, last, shares, start, end);
    const reached = farthest(points, first, shares, next);
    const isBetter = reached.distance < worst.distance;
    const isSettled = reached.distance > (worst.distance > limit ? SLOWEST : ENOUGH) * worst.distance && round > 3;
    latest = next;
    if (isBetter) [curve, worst] = [next, reached];
    if (isSettled) break;
  }
  if (worst.distance <= limit || depth >= MOST_DEPTH) {
    made.push(curve);
    return;
  }
  const split = Math.min(last - 1, Math.max(first + 1, first + worst.index));
  const tangent = line.directionAt(split);
  fitPart(line, first, split, start, { x: -tangent.x, y: -tangent.y }, made, depth + 1);
  fitPart(line, split, last, tangent, end, made, depth + 1);
}

const handled = (from: Vec2, to: Vec2, start: Vec2, end: Vec2, a: number, b: number): FittedCubic => ({
  from,
  handles: [
    { x: from.x + a * start.x, y: from.y + a * start.y },
    { x: to.x + b * end.x, y: to.y + b * end.y },
  ],
  to,
});

function chordShares(points: ArrayLike<number>, first: number, last: number): Float64Array {
  const shares = new Float64Array(last - first + 1);
  for (let i = 1; i < shares.length; i += 1) {
    const [a, b] = [at(points, first + i - 1), at(points, first + i)];
    shares[i] = shares[i - 1] + Math.hypot(b.x - a.x, b.y - a.y);
  }
  const total = shares[shares.length - 1];
  return total > 0 ? shares.map((value) => value / total) : shares.map((_, i) => i / (shares.length - 1));
}

/** Handle lengths with least squared distances at given parameters (Schneider 1990, eq. for alpha 1 and 2). */
function leastCurve(
  points: ArrayLike<number>,
  first: number,
  last: number,
  shares: Float64Array,
  start: Vec2,
  end: Vec2,
): FittedCubic {
  const [from, to] = [at(points, first), at(points, last)];
  let [c00, c01, c11, x0, x1] = [0, 0, 0, 0, 0];
  const cos = start.x * end.x + start.y * end.y;
  for (const [i, t] of shares.entries()) {
    const s = 1 - t;
    const [b0, b1, b2, b3] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
    const { x, y } = at(points, first + i);
    const [dx, dy] = [x - (b0 + b1) * from.x - (b2 + b3) * to.x, y - (b0 + b1) * from.y - (b2 + b3) * to.y];
    [c00, c01, c11] = [c00 + b1 * b1, c01 + b1 * b2 * cos, c11 + b2 * b2];
    x0 += b1 * (start.x * dx + start.y * dy);
    x1 += b2 * (end.x * dx + end.y * dy);
  }
  const det = c00 * c11 - c01 * c01;
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  let [a, b] = det > 1e-12 * c00 * c11 ? [(x0 * c11 - x1 * c01) / det, (c00 * x1 - c01 * x0) / det] : [0, 0];
  // Handles that point back, or reach far beyond the line, make loops (Schneider 1990: the heuristic of Wu and Barsky).
  const length = wayOf(points, first, last);
  if (!(a > 1e-6 * chord && b > 1e-6 * chord && a < length && b < length)) [a, b] = [chord / 3, chord / 3];
  return handled(from, to, start, end, a, b);
}

function wayOf(points: ArrayLike<number>, first: number, last: number): number {
  let sum = 0;
  for (let i = first; i < last; i += 1)
    sum += Math.hypot(points[2 * i + 2] - points[2 * i], points[2 * i + 3] - points[2 * i + 1]);
  return sum;
}

export function cubicPoint({ from, handles: [b, c], to }: FittedCubic, t: number): Vec2 {
  const s = 1 - t;
  const [p, q, r, w] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
  return { x: p * from.x + q * b.x + r * c.x + w * to.x, y: p * from.y + q * b.y + r * c.y + w * to.y };
}

function farthest(
  points: ArrayLike<number>,
  first: number,
  shares: Float64Array,
  curve: FittedCubic,
): { distance: number; index: number } {
  let [distance, index] = [0, shares.length >> 1];
  for (const [i, t] of shares.entries()) {
    const p = cubicPoint(curve, t);
    const off = Math.hypot(p.x - points[2 * (first + i)], p.y - points[2 * (first + i) + 1]);
    if (off > distance) [distance, index] = [off, i];
  }
  return { distance, index };
}

/** One step of Newton's for each parameter towards the nearest place of the curve; they stay in order. */
function putRight(points: ArrayLike<number>, first: number, shares: Float64Array, curve: FittedCubic): void {
  const {
    from: a,
    handles: [b, c],
    to: d,
  } = curve;
  for (let i = 1; i + 1 < shares.length; i += 1) {
    const t = shares[i];
    const s = 1 - t;
    const p = cubicPoint(curve, t);
    const [ox, oy] = [p.x - points[2 * (first + i)], p.y - points[2 * (first + i) + 1]];
    const [k0, k1, k2] = [3 * s * s, 6 * s * t, 3 * t * t];
    const [dx, dy] = [
      k0 * (b.x - a.x) + k1 * (c.x - b.x) + k2 * (d.x - c.x),
      k0 * (b.y - a.y) + k1 * (c.y - b.y) + k2 * (d.y - c.y),
    ];
    const [ex, ey] = [
      6 * s * (c.x - 2 * b.x + a.x) + 6 * t * (d.x - 2 * c.x + b.x),
      6 * s * (c.y - 2 * b.y + a.y) + 6 * t * (d.y - 2 * c.y + b.y),
    ];
    const bottom = dx * dx + dy * dy + ox * ex + oy * ey;
    const next = bottom > 0 ? t - (ox * dx + oy * dy) / bottom : t;
    shares[i] = Math.min(1, Math.max(shares[i - 1], next));
  }
}
