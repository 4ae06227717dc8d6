import { distanceToSegment } from './distance-to-segment.ts';
import { ringLength, type Ring } from './ring.ts';
import { movePoints, type Move2 } from './turn-and-move.ts';

/** Places that a ring is first compared at, evenly along it. */
const PLACES = 72;

/** Rounds of laying it better from nearest point to nearest point; later ones change hundredths of a millimetre. */
const ROUNDS = 12;

/** Points of a ring that are looked at most: of a finer one so many of its corners, evenly. */
const MOST_POINTS = 400;

/** A turned start counts as better only by this share of the rings' spread: a square stays as it lies. */
const BETTER_BY = 1e-3;

/** A ring laid on another, and how far they are apart then. */
export interface LaidRing {
  /** Moves the ring that was laid. */
  readonly move: Move2;
  /** Greatest distance of a corner of one of the two to the line of the other, mm. */
  readonly apartMm: number;
}

/**
 * Lays one ring on another by turning and moving it, never by mirroring: first evenly spaced places of both by least squares from each of their
 * starts (Umeyama, IEEE Trans. Pattern Anal. Mach. Intell. 13, 1991, without scale), then nearest point to nearest point (Besl and McKay, ibid.
 * 14, 1992).
 * @param still  stays where it is, 3 points or more.
 * @param moved  is laid on it; both run the same way round.
 */
export function layRingOn(still: Ring, moved: Ring): LaidRing {
  let move = bestStart(evenly(still), evenly(moved));
  const corners = atMost(moved);
  for (let round = 0; round < ROUNDS; round += 1) {
    const here = movePoints(corners, move);
    move = leastSquares(nearestOn(still, here), corners);
  }
  return { move, apartMm: apartMm(still, movePoints(moved, move)) };
}

/** Greatest distance of a corner of one ring to the line of the other, both ways, mm. */
function apartMm(one: Ring, other: Ring): number {
  return Math.max(farthestFrom(one, atMost(other)), farthestFrom(other, atMost(one)));
}

function farthestFrom(ring: Ring, points: Ring): number {
  let most = 0;
  for (let i = 0; i < points.length; i += 2) {
    let least = Infinity;
    for (let a = 0; a < ring.length; a += 2) {
      const b = (a + 2) % ring.length;
      least = Math.min(least, distanceToSegment(points[i], points[i + 1], ring[a], ring[a + 1], ring[b], ring[b + 1]));
    }
    most = Math.max(most, least);
  }
  return most;
}

/** The nearest place of a ring to each point. */
function nearestOn(ring: Ring, points: Ring): Float64Array {
  const near = new Float64Array(points.length);
  for (let i = 0; i < points.length; i += 2) {
    let least = Infinity;
    for (let a = 0; a < ring.length; a += 2) {
      const b = (a + 2) % ring.length;
      const [dx, dy] = [ring[b] - ring[a], ring[b + 1] - ring[a + 1]];
      const square = dx * dx + dy * dy;
      const along = (points[i] - ring[a]) * dx + (points[i + 1] - ring[a + 1]) * dy;
      const share = square > 0 ? Math.min(1, Math.max(0, along / square)) : 0;
      const [x, y] = [ring[a] + share * dx, ring[a + 1] + share * dy];
      const distance = Math.hypot(points[i] - x, points[i + 1] - y);
      if (distance >= least) continue;
      least = distance;
      near[i] = x;
      near[i + 1] = y;
    }
  }
  return near;
}

/** The start at which the places go together best; as they lie, where none is better. */
function bestStart(still: Float64Array, moved: Float64Array): Move2 {
  let best = leastSquares(still, moved);
  let least = Infinity;
  for (let start = 0; start < PLACES; start += 1) {
    const turned = Float64Array.from(moved, (_, i) => moved[(i + 2 * start) % moved.length]);
    const move = leastSquares(still, turned);
    const rest = squares(still, movePoints(turned, move));
    const isNearer = Math.abs(move.turnRad) < Math.abs(best.turnRad);
    const slack = BETTER_BY * spread(still);
    if (rest > least + (isNearer ? slack : -slack)) continue;
    least = Math.min(rest, least);
    best = move;
  }
  return best;
}

/** The turn and move of `moved` that brings its points nearest to those of the same number. */
function leastSquares(still: Float64Array, moved: Float64Array): Move2 {
  const [cx, cy] = middleOf(still);
  const [mx, my] = middleOf(moved);
  let [dot, cross] = [0, 0];
  for (let i = 0; i < still.length; i += 2) {
    const [ax, ay, bx, by] = [still[i] - cx, still[i + 1] - cy, moved[i] - mx, moved[i + 1] - my];
    dot += ax * bx + ay * by;
    cross += bx * ay - by * ax;
  }
  const turnRad = Math.atan2(cross, dot);
  const [x, y] = movePoints([mx, my], { x: 0, y: 0, turnRad });
  return { x: cx - x, y: cy - y, turnRad };
}

function middleOf(points: Float64Array): readonly [number, number] {
  let [x, y] = [0, 0];
  for (let i = 0; i < points.length; i += 2) {
    x += points[i];
    y += points[i + 1];
  }
  return [(2 * x) / points.length, (2 * y) / points.length];
}

const squares = (one: Float64Array, other: Float64Array): number =>
  one.reduce((sum, value, i) => sum + (value - other[i]) ** 2, 0);

function spread(points: Float64Array): number {
  const [x, y] = middleOf(points);
  return points.reduce((sum, value, i) => sum + (value - (i % 2 === 0 ? x : y)) ** 2, 0);
}

/** Places evenly along a ring, from its first point. */
function evenly(ring: Ring): Float64Array {
  const step = ringLength(ring) / PLACES;
  const places = new Float64Array(2 * PLACES);
  let [at, a] = [0, 0];
  let next = lengthFrom(ring, 0);
  for (let i = 0; i < PLACES; i += 1) {
    while (a + 2 < ring.length && at + next < i * step) {
      at += next;
      a += 2;
      next = lengthFrom(ring, a);
    }
    const b = (a + 2) % ring.length;
    const share = next > 0 ? Math.min(1, (i * step - at) / next) : 0;
    places[2 * i] = ring[a] + share * (ring[b] - ring[a]);
    places[2 * i + 1] = ring[a + 1] + share * (ring[b + 1] - ring[a + 1]);
  }
  return places;
}

function lengthFrom(ring: Ring, a: number): number {
  const b = (a + 2) % ring.length;
  return Math.hypot(ring[b] - ring[a], ring[b + 1] - ring[a + 1]);
}

function atMost(ring: Ring): Ring {
  const count = ring.length / 2;
  if (count <= MOST_POINTS) return ring;
  const points = new Float64Array(2 * MOST_POINTS);
  for (let i = 0; i < MOST_POINTS; i += 1) {
    const from = 2 * Math.floor((i * count) / MOST_POINTS);
    points[2 * i] = ring[from];
    points[2 * i + 1] = ring[from + 1];
  }
  return points;
}
