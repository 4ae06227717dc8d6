import type { Box2 } from './ring.ts';

/** The part of a segment inside a box, as fractions of the way from its first end to its second. */
export interface InsideSpan {
  readonly from: number;
  readonly to: number;
}

/**
 * The span of the segment that lies in the closed box; null when none does (Liang, Barsky, "A new concept and method for line clipping",
 * ACM TOG 3(1), 1984). A segment that only touches the box gives a span of no length.
 */
export function segmentInBox(ax: number, ay: number, bx: number, by: number, box: Box2): InsideSpan | null {
  const across = slabSpan(ax, bx, box.minX, box.maxX);
  if (across === null) return null;
  const up = slabSpan(ay, by, box.minY, box.maxY);
  if (up === null) return null;
  const from = Math.max(across.from, up.from);
  const to = Math.min(across.to, up.to);
  return from <= to ? { from, to } : null;
}

const WHOLE: InsideSpan = { from: 0, to: 1 };

/** The span between two parallel sides. */
function slabSpan(a: number, b: number, low: number, high: number): InsideSpan | null {
  if (a >= low && a <= high && b >= low && b <= high) return WHOLE;
  if ((a < low && b < low) || (a > high && b > high)) return null;
  const d = b - a;
  const [near, far] = d > 0 ? [low, high] : [high, low];
  return { from: Math.max(0, (near - a) / d), to: Math.min(1, (far - a) / d) };
}

/**
 * The runs of a line that lie in the box, each a list of packed x, y. A closed line that lies wholly inside comes back as one run without
 * its first point repeated and `closed` true; runs that only touch the box are left out.
 */
export function lineInBox(
  points: ArrayLike<number>,
  closed: boolean,
  box: Box2,
): readonly { points: Float64Array; closed: boolean }[] {
  const count = points.length / 2;
  if (isInside(points, box)) return count === 0 ? [] : [{ points: Float64Array.from(points), closed }];
  const first = closed ? startOutside(points, box) : 0;
  const runs: number[][] = [];
  let run: number[] = [];
  const segments = closed ? count : count - 1;
  for (let s = 0; s < segments; s += 1) {
    const a = 2 * ((first + s) % count);
    const b = 2 * ((first + s + 1) % count);
    const span = segmentInBox(points[a], points[a + 1], points[b], points[b + 1], box);
    if (span === null) {
      run = finish(runs, run);
      continue;
    }
    if (run.length === 0 || span.from > 0) {
      finish(runs, run);
      run = pointOn(points, a, b, span.from);
    }
    run.push(...pointOn(points, a, b, span.to));
    if (span.to < 1) run = finish(runs, run);
  }
  finish(runs, run);
  return runs.map((found) => ({ points: Float64Array.from(found), closed: false }));
}

/**
 * The filled polygon cut to the box (Sutherland, Hodgman, "Reentrant polygon clipping", CACM 17(1), 1974); empty when nothing is left.
 * Meant for small convex shapes: a hollow one may come back with edges that lie on the box's side.
 */
export function polygonInBox(points: ArrayLike<number>, box: Box2): Float64Array {
  let ring = Array.from({ length: points.length / 2 }, (_, i) => [points[2 * i], points[2 * i + 1]] as const);
  const sides: readonly (readonly [axis: 0 | 1, limit: number, sign: 1 | -1])[] = [
    [0, box.minX, 1],
    [0, box.maxX, -1],
    [1, box.minY, 1],
    [1, box.maxY, -1],
  ];
  for (const [axis, limit, sign] of sides) {
    const next: (readonly [number, number])[] = [];
    for (const [i, b] of ring.entries()) {
      const a = ring[(i + ring.length - 1) % ring.length];
      const da = sign * (a[axis] - limit);
      const db = sign * (b[axis] - limit);
      if (da >= 0 !== db >= 0) {
        const t = da / (da - db);
        const other = a[1 - axis] + t * (b[1 - axis] - a[1 - axis]);
        next.push(axis === 0 ? [limit, other] : [other, limit]);
      }
      if (db >= 0) next.push(b);
    }
    ring = next;
  }
  return Float64Array.from(ring.flat());
}

function isInside(points: ArrayLike<number>, box: Box2): boolean {
  for (let i = 0; i + 1 < points.length; i += 2) {
    if (!(points[i] >= box.minX && points[i] <= box.maxX && points[i + 1] >= box.minY && points[i + 1] <= box.maxY))
      return false;
  }
  return true;
}

/** A point outside the box to begin a closed line at, so that no run is cut in two where the line happens to start. */
function startOutside(points: ArrayLike<number>, box: Box2): number {
  for (let i = 0; i + 1 < points.length; i += 2) {
    if (points[i] < box.minX || points[i] > box.maxX || points[i + 1] < box.minY || points[i + 1] > box.maxY)
      return i / 2;
  }
  return 0;
}

/** Keeps a run that has some length, and gives an empty one to go on with. */
function finish(runs: number[][], run: number[]): number[] {
  if (run.some((value, i) => i >= 2 && value !== run[i - 2])) runs.push(run);
  return [];
}

/** Exact at both ends. */
function pointOn(points: ArrayLike<number>, a: number, b: number, t: number): number[] {
  if (t === 0) return [points[a], points[a + 1]];
  if (t === 1) return [points[b], points[b + 1]];
  return [points[a] + t * (points[b] - points[a]), points[a + 1] + t * (points[b + 1] - points[a + 1])];
}
