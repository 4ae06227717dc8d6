import { fitCubics } from '../../geom/fit-cubics.ts';
import { boxOfPoints } from '../../geom/ring.ts';
import type { Vec2 } from '../../geom/vec.ts';
import type { ArtPath, ArtSegment } from '../../model/artwork.ts';
import { findCorners, waysAlong, type EdgeManner, type FoundCorner } from './trace-corners.ts';
import { traceDistance, type CornerZone, type TraceDistance } from './trace-measure.ts';
import {
  evened,
  footOn,
  meetingOf,
  straightParts,
  type EvenPlaces,
  type Part,
  type StraightLine,
} from './trace-parts.ts';

/** A line of a picture as curves, and how near they are to it. */
export interface TracedLine extends TraceDistance {
  readonly path: ArtPath;
  readonly corners: number;
  /** No curve kept to the limit: its places are joined straight. */
  readonly isJoined: boolean;
}

/** Shares of the limit that fits are tried with: the first leaves room for what evening out moves. */
const TRIES = [0.7, 0.35, 0.15, 0.05] as const;
/** A corner is set no farther from the picture's rounded one than this, px. */
const CORNER_PX = 3;
/** Fewer places than this are joined straight. */
const FEWEST = 6;

/** Places between two corners, or all of a line without, in mm; `zone` of the corner before them. */
interface Stretch {
  readonly places: Float64Array;
  readonly parts: readonly Part[];
  /** The rounded corner before it as the picture has it; null where it begins on a smooth line. */
  readonly corner: Vec2 | null;
}

/**
 * Fits lines and cubic curves to a closed line of places. Corners are found in the picture; what it rounds off there is replaced by the place where the two
 * sides meet. Straight parts become lines, the rest curves that meet smoothly.
 * @param px  places in the picture, packed x y, no two alike.
 * @param mm  the same places at their true size.
 * @param limitMm  greatest distance between curves and places, > 0. Where no curve keeps it the places themselves are joined.
 */
export function traceLine(px: Float64Array, mm: Float64Array, manner: EdgeManner, limitMm: number): TracedLine {
  const ways = waysAlong(px);
  const n = px.length / 2;
  const mmPerPx = waysAlong(mm)[n] / ways[n];
  if (n >= FEWEST) {
    const corners = findCorners(px, ways, manner);
    for (const [i, share] of TRIES.entries()) {
      const straightMm = Math.min(manner.straightPx * mmPerPx, (i === 0 ? 1 : share) * limitMm);
      const stretches = stretchesOf(mm, ways, corners, straightMm);
      const { path, zones } = fitted(stretches, manner, mmPerPx, share * limitMm);
      const distance = traceDistance(mm, path, zones, limitMm);
      if (distance.deviationMm <= limitMm) return { path, corners: corners.length, isJoined: false, ...distance };
    }
  }
  return { path: joined(mm), corners: 0, isJoined: true, deviationMm: 0, cornerMm: 0 };
}

const placeAt = (places: Float64Array, i: number): Vec2 => ({ x: places[2 * i], y: places[2 * i + 1] });

function joined(mm: Float64Array): ArtPath {
  const n = mm.length / 2;
  const nodes = Array.from({ length: n }, (_, i) => placeAt(mm, i));
  return {
    segments: nodes.map((from, i) => ({ kind: 'line', from, to: nodes[(i + 1) % n] })),
    isClosed: true,
  };
}

function stretchesOf(
  mm: Float64Array,
  ways: Float64Array,
  corners: readonly FoundCorner[],
  straightMm: number,
): Stretch[] {
  const n = mm.length / 2;
  const box = boxOfPoints(mm);
  const size = Math.hypot(box.maxX - box.minX, box.maxY - box.minY);
  const take = (numbers: readonly number[]): Float64Array =>
    Float64Array.from(numbers.flatMap((i) => [mm[2 * i], mm[2 * i + 1]]));
  if (corners.length === 0) {
    const start = mostBent(mm);
    const places = take(Array.from({ length: n + 1 }, (_, k) => (start + k) % n));
    return [{ places, parts: straightParts(places, straightMm, size, false), corner: null }];
  }
  return corners.map(({ index: first, gapPx }, k) => {
    const { index: last, gapPx: lastGapPx } = corners[(k + 1) % corners.length];
    const numbers: number[] = [];
    const end = last > first ? last : last + n;
    for (let i = first + 1; i < end; i += 1) {
      const way = ways[i % n] + (i >= n ? ways[n] : 0);
      const [before, after] = [way - ways[first], ways[last] + (end >= n ? ways[n] : 0) - way];
      if (before >= gapPx && after >= lastGapPx) numbers.push(i % n);
    }
    const places = take(numbers);
    const parts = numbers.length < 2 ? [] : straightParts(places, straightMm, size, true);
    return { places, parts, corner: placeAt(mm, first) };
  });
}

/** The place where the line bends most over a few places: never within a straight part of a shape that has bends. */
function mostBent(mm: Float64Array): number {
  const n = mm.length / 2;
  const reach = Math.max(1, Math.min(6, n >> 2));
  let [best, most] = [0, -1];
  for (let i = 0; i < n; i += 1) {
    const [a, b, c] = [placeAt(mm, (i - reach + n) % n), placeAt(mm, i), placeAt(mm, (i + reach) % n)];
    const [ux, uy, vx, vy] = [b.x - a.x, b.y - a.y, c.x - b.x, c.y - b.y];
    const turn = Math.abs(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy));
    if (turn > most + 1e-9) [best, most] = [i, turn];
  }
  return best;
}

function fitted(
  stretches: readonly Stretch[],
  manner: EdgeManner,
  mmPerPx: number,
  limitMm: number,
): { path: ArtPath; zones: readonly CornerZone[] } {
  const noise = manner.sidePx * mmPerPx;
  if (stretches.length === 1 && stretches[0].corner === null) {
    const { places, parts } = stretches[0];
    const isSmooth = parts.every(({ line }) => line === null);
    const path = isSmooth ? smoothLoop(places.subarray(2), noise, limitMm) : openedLoop(places, parts, noise, limitMm);
    return { path, zones: [] };
  }
  const evens = stretches.map(({ places, parts }) => evenParts(places, parts, noise));
  const sides = stretches.map(({ parts }, k) => {
    if (parts.length === 0) return { start: null, end: null };
    const last = parts.length - 1;
    const [first, after] = [evens[k][0], evens[k][last]];
    return {
      start: parts[0].line ?? (first === null ? null : lineAt(first, 0)),
      end: parts[last].line ?? (after === null ? null : lineAt(after, after.places.length / 2 - 1)),
    };
  });
  const nodes = stretches.map(({ corner }, k) => {
    const [before, after] = [sides[(k + sides.length - 1) % sides.length].end, sides[k].start];
    const seen = corner ?? { x: 0, y: 0 };
    const meeting = before === null || after === null ? null : meetingOf(before, after);
    const isNear = meeting !== null && Math.hypot(meeting.x - seen.x, meeting.y - seen.y) <= CORNER_PX * mmPerPx;
    return isNear ? meeting : seen;
  });
  const segments: ArtSegment[] = [];
  const zones: CornerZone[] = [];
  for (const [k, { places, parts, corner }] of stretches.entries()) {
    const [from, to] = [nodes[k], nodes[(k + 1) % nodes.length]];
    const before = stretches[(k + stretches.length - 1) % stretches.length].places;
    const ends = [placeAt(places, 0), placeAt(before, before.length / 2 - 1), corner ?? from];
    const radiusMm = Math.max(
      ...ends.map(({ x, y }) => Math.hypot(x - from.x, y - from.y)).filter(Number.isFinite),
      manner.gapPx * mmPerPx,
    );
    zones.push({ at: from, radiusMm });
    if (parts.length === 0) segments.push({ kind: 'line', from, to });
    else
      addParts(segments, places, parts, evens[k], limitMm, {
        from,
        to,
        start: sides[k].start?.along ?? null,
        end: sides[k].end?.along ?? null,
        areEndsApart: true,
      });
  }
  return { path: { segments, isClosed: true }, zones };
}

/** Ends of a stretch: its nodes and the directions along it there; whether the nodes lie beyond its first and last place or on them. */
interface Ends {
  readonly from: Vec2;
  readonly to: Vec2;
  readonly start: Vec2 | null;
  readonly end: Vec2 | null;
  readonly areEndsApart: boolean;
}

function addParts(
  segments: ArtSegment[],
  places: Float64Array,
  parts: readonly Part[],
  evens: readonly (EvenPlaces | null)[],
  limitMm: number,
  { from, to, start, end, areEndsApart }: Ends,
): void {
  const nodes = [from, ...parts.slice(1).map((part, i) => nodeBetween(places, parts[i], part)), to];
  for (const [i, { line }] of parts.entries()) {
    const [a, b] = [nodes[i], nodes[i + 1]];
    const own = evens[i];
    if (line !== null || own === null) {
      segments.push({ kind: 'line', from: a, to: b });
      continue;
    }
    const skipFirst = i > 0 || !areEndsApart ? 1 : 0;
    const skipLast = i < parts.length - 1 || !areEndsApart ? 1 : 0;
    const until = Math.max(skipFirst, own.places.length / 2 - skipLast);
    const points = [a.x, a.y, ...own.places.subarray(2 * skipFirst, 2 * until), b.x, b.y];
    const directionAt = (k: number): Vec2 => lineAt(own, k - 1 + skipFirst).along;
    const along = (side: StraightLine | null | undefined, other: Vec2 | null): Vec2 | null => side?.along ?? other;
    const leaving = i === 0 ? start : along(parts[i - 1].line, null);
    const arriving = i === parts.length - 1 ? end : along(parts[i + 1].line, null);
    const back = arriving === null ? null : { x: -arriving.x, y: -arriving.y };
    segments.push(...cubics(points, leaving, back, limitMm, directionAt, a, b));
  }
}

/** Where two parts of a smooth stretch meet: on the straight one. */
function nodeBetween(places: Float64Array, before: Part, after: Part): Vec2 {
  const [x, y] = [places[2 * before.last], places[2 * before.last + 1]];
  if (before.line !== null && after.line !== null) {
    const meeting = meetingOf(before.line, after.line);
    const span = Math.hypot(
      x - places[2 * Math.max(0, before.last - 3)],
      y - places[2 * Math.max(0, before.last - 3) + 1],
    );
    if (meeting !== null && Math.hypot(meeting.x - x, meeting.y - y) <= span) return meeting;
  }
  const line = before.line ?? after.line;
  return line === null ? { x, y } : footOn(line, x, y);
}

/** Curves through packed points; their ends are the very nodes given, so that parts follow each other without a break. */
function cubics(
  points: readonly number[],
  start: Vec2 | null,
  end: Vec2 | null,
  limitMm: number,
  directionAt: (i: number) => Vec2,
  from: Vec2,
  to: Vec2,
): ArtSegment[] {
  const made = fitCubics(points, start, end, limitMm, directionAt);
  return made.map((one, i) => ({
    kind: 'cubic',
    from: i === 0 ? from : made[i - 1].to,
    handles: one.handles,
    to: i === made.length - 1 ? to : one.to,
  }));
}

/** A closed line without corners or straight parts: curves between the places farthest left, right, up and down. */
function smoothLoop(places: Float64Array, noise: number, limitMm: number): ArtPath {
  const even = evened(places, noise, true);
  const n = places.length / 2;
  const ends = new Set(
    [0, 1].flatMap((axis) => [farthestAlong(even.places, axis, 1), farthestAlong(even.places, axis, -1)]),
  );
  const starts = Array.from(ends).sort((a, b) => a - b);
  const nodes = starts.map((i) => lineAt(even, i));
  const segments: ArtSegment[] = [];
  for (const [k, first] of starts.entries()) {
    const next = starts[(k + 1) % starts.length];
    const last = next > first ? next : next + n;
    const points: number[] = [];
    for (let i = first; i <= last; i += 1) points.push(even.places[2 * (i % n)], even.places[2 * (i % n) + 1]);
    const [leaving, arriving] = [nodes[k], nodes[(k + 1) % nodes.length]];
    const back = { x: -arriving.along.x, y: -arriving.along.y };
    const directionAt = (i: number): Vec2 => lineAt(even, (first + i) % n).along;
    segments.push(...cubics(points, leaving.along, back, limitMm, directionAt, leaving.at, arriving.at));
  }
  return { segments, isClosed: true };
}

/** A closed line without corners that has straight parts: opened where it bends most. The place stands at both ends of the stretch. */
function openedLoop(places: Float64Array, parts: readonly Part[], noise: number, limitMm: number): ArtPath {
  const { at, along } = lineAt(evened(places.subarray(2), noise, true), places.length / 2 - 2);
  const segments: ArtSegment[] = [];
  addParts(segments, places, parts, evenParts(places, parts, noise), limitMm, {
    from: at,
    to: at,
    start: along,
    end: along,
    areEndsApart: false,
  });
  return { segments, isClosed: true };
}

/** Places of curved parts evened out; null for straight ones. */
const evenParts = (places: Float64Array, parts: readonly Part[], noise: number): (EvenPlaces | null)[] =>
  parts.map((part) => (part.line === null ? evened(partPlaces(places, part), noise, false) : null));

const partPlaces = (places: Float64Array, { first, last }: Part): Float64Array => places.slice(2 * first, 2 * last + 2);

const lineAt = ({ places, directions }: EvenPlaces, i: number): StraightLine => ({
  at: placeAt(places, i),
  along: placeAt(directions, i),
});

function farthestAlong(places: Float64Array, axis: number, sign: number): number {
  let best = 0;
  for (let i = 1; 2 * i < places.length; i += 1)
    if (sign * places[2 * i + axis] > sign * places[2 * best + axis]) best = i;
  return best;
}
