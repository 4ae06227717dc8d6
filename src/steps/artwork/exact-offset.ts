import { GRID_PER_MM } from '../../geom/polygon-grid.ts';
import type { Ring } from '../../geom/ring.ts';
import { length2, sub2, type Vec2 } from '../../geom/vec.ts';
import type { ArtArc, ArtOutline, ArtPath, ArtRegion, ArtSegment } from '../../model/artwork.ts';
import { flatOutline } from './regions.ts';
import { circleRadius, pathArea, pathLength } from './segments.ts';

/** A circle that an offset line may follow: round a corner, or beside a circle of the source. */
export interface OffsetCircle {
  readonly centre: Vec2;
  readonly radiusMm: number;
}

/** More comparisons than this are not made: the line stays in straight parts. */
const MOST_COMPARED = 2e7;
/** Corners in a row that make an arc. */
const LEAST_RUN = 4;
/** A line so little beside a circle touches it, mm: what the grid may move both. */
const TOUCHING_MM = 5 / GRID_PER_MM;

/** Circles that outlines moved by a distance may follow. @param isRound  whether corners are rounded. */
export function circlesOf(
  regions: readonly ArtRegion[],
  distanceMm: number,
  isRound: boolean,
): readonly OffsetCircle[] {
  const circles: OffsetCircle[] = [];
  const reach = Math.abs(distanceMm);
  for (const { outline, holes } of regions) {
    for (const { path } of [outline, ...holes]) {
      if (path === null) continue;
      for (const segment of path.segments) {
        if (isRound) circles.push({ centre: segment.from, radiusMm: reach });
        const radius = segment.kind === 'arc' ? circleRadius(segment) : null;
        if (segment.kind !== 'arc' || radius === null) continue;
        circles.push({ centre: segment.centre, radiusMm: radius + reach });
        if (radius > reach) circles.push({ centre: segment.centre, radiusMm: radius - reach });
      }
    }
  }
  return circles;
}

/**
 * An outline of straight parts in which runs along one of the circles become its arcs again.
 * @param withinMm  corners and chords no farther than this from a circle lie on it, > 0.
 */
export function outlineWithArcs(ring: Ring, circles: readonly OffsetCircle[], withinMm: number): ArtOutline {
  const count = ring.length / 2;
  if (circles.length === 0 || count * circles.length > MOST_COMPARED) return flatOutline(ring);
  const at = (i: number): Vec2 => ({ x: ring[2 * (i % count)], y: ring[2 * (i % count) + 1] });
  const near = withinMm + 2 / GRID_PER_MM;
  /** For each side the circles it lies on. */
  const sides = Array.from({ length: count }, (_, i): number[] => {
    const [a, b] = [at(i), at(i + 1)];
    return circles.flatMap((circle, k) => (isChord(circle, a, b, near) ? [k] : []));
  });
  const whole = circles.findIndex((_, k) => sides.every((own) => own.includes(k)));
  if (whole >= 0) return ofPath(wholeCircle(circles[whole]), ring);
  const first = sides.findIndex((own, i) => !own.some((k) => sides[(i + count - 1) % count].includes(k)));
  if (first < 0) return flatOutline(ring);
  const runs: Run[] = [];
  for (let i = 0; i < count;) {
    const run = longestRun(sides, (first + i) % count, count - i);
    const length = run.sides >= LEAST_RUN ? run.sides : 1;
    const circle = run.sides >= LEAST_RUN ? circles[run.circle] : null;
    runs.push({ circle, from: at(first + i), through: at(first + i + 1), to: at(first + i + length) });
    i += length;
  }
  return ofPath({ segments: segmentsOf(runs, near), isClosed: true }, ring);
}

/** Sides in a row along one circle, or one side. */
interface Run {
  readonly circle: OffsetCircle | null;
  readonly from: Vec2;
  /** Its second corner. */
  readonly through: Vec2;
  readonly to: Vec2;
}

function segmentsOf(runs: readonly Run[], near: number): ArtSegment[] {
  const starts = runs.map((run, i) => jointOf(runs[(i + runs.length - 1) % runs.length], run, near));
  return runs.map(({ circle, through }, i): ArtSegment => {
    const [from, to] = [starts[i], starts[(i + 1) % runs.length]];
    return circle === null ? { kind: 'line', from, to } : arcOn(circle, from, to, through);
  });
}

/**
 * Where two runs meet: a straight side touches a circle, or crosses it, not where the corners of its chords stand. Two sides meet in their corner, and so
 * do two circles, but for what the second is off it.
 */
function jointOf(before: Run, after: Run, near: number): Vec2 {
  const corner = after.from;
  const circle = after.circle ?? before.circle;
  if (circle === null) return corner;
  const side = after.circle === null ? after : before.circle === null ? before : null;
  const { centre, radiusMm } = circle;
  const joint = side === null ? null : onLine(side, circle, corner);
  if (joint !== null && length2(sub2(joint, corner)) <= 2 * Math.sqrt(2 * radiusMm * near) + near) return joint;
  const away = sub2(corner, centre);
  const share = radiusMm / length2(away);
  return { x: centre.x + share * away.x, y: centre.y + share * away.y };
}

/** The place where the line through a side crosses a circle, or passes it by no more than the grid, that is nearer to a corner. */
function onLine({ from, to }: Run, { centre, radiusMm }: OffsetCircle, corner: Vec2): Vec2 | null {
  const along = sub2(to, from);
  const length = length2(along);
  const [dx, dy] = [along.x / length, along.y / length];
  const reach = (centre.x - from.x) * dx + (centre.y - from.y) * dy;
  const foot = { x: from.x + reach * dx, y: from.y + reach * dy };
  const off = length2(sub2(foot, centre));
  if (off > radiusMm + TOUCHING_MM) return null;
  // The grid lets a line that touches cross by a hair, which would move the place along it by far more.
  const half = off > radiusMm - TOUCHING_MM ? 0 : Math.sqrt(radiusMm * radiusMm - off * off);
  const sign = (corner.x - foot.x) * dx + (corner.y - foot.y) * dy < 0 ? -1 : 1;
  return { x: foot.x + sign * half * dx, y: foot.y + sign * half * dy };
}

const ofPath = (path: ArtPath, ring: Ring): ArtOutline => ({
  shape: null,
  path: ringTurnsLeft(ring) === pathArea(path) > 0 ? path : { ...path, segments: path.segments.map(turnedBack) },
  ring,
  lengthMm: pathLength(path),
  areaMm2: Math.abs(pathArea(path)),
});

const ringTurnsLeft = (ring: Ring): boolean => {
  let twice = 0;
  for (let i = 0; i < ring.length; i += 2) {
    const j = (i + 2) % ring.length;
    twice += (ring[i] - ring[0]) * (ring[j + 1] - ring[1]) - (ring[j] - ring[0]) * (ring[i + 1] - ring[1]);
  }
  return twice > 0;
};

/** Of a whole circle alone: the other way round. */
const turnedBack = (segment: ArtSegment): ArtSegment =>
  segment.kind === 'arc' ? { ...segment, turn: -segment.turn } : segment;

function isChord({ centre, radiusMm }: OffsetCircle, a: Vec2, b: Vec2, near: number): boolean {
  const off = (p: Vec2): number => Math.hypot(p.x - centre.x, p.y - centre.y) - radiusMm;
  if (Math.abs(off(a)) > near || Math.abs(off(b)) > near) return false;
  return Math.abs(off({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 })) <= 2 * near;
}

/** The circle that most sides in a row from one on lie on. */
function longestRun(
  sides: readonly (readonly number[])[],
  from: number,
  most: number,
): { readonly circle: number; readonly sides: number } {
  let best = { circle: -1, sides: 0 };
  for (const circle of sides[from]) {
    let length = 1;
    while (length < most && sides[(from + length) % sides.length].includes(circle)) length += 1;
    if (length > best.sides) best = { circle, sides: length };
  }
  return best;
}

/** The arc of a circle between two places beside it, through the side that a third lies on. */
function arcOn({ centre, radiusMm }: OffsetCircle, from: Vec2, to: Vec2, through: Vec2): ArtArc {
  const angle = (p: Vec2): number => Math.atan2(p.y - centre.y, p.x - centre.x);
  const [start, end] = [angle(from), angle(to)];
  const isLeft = Math.sin(angle(through) - start) > 0;
  let turn = end - start;
  if (isLeft && turn <= 0) turn += 2 * Math.PI;
  if (!isLeft && turn >= 0) turn -= 2 * Math.PI;
  return { ...circleOf(centre, radiusMm), from, to, start, turn };
}

const circleOf = (centre: Vec2, radiusMm: number): Omit<ArtArc, 'from' | 'to' | 'start' | 'turn'> => ({
  kind: 'arc',
  centre,
  u: { x: radiusMm, y: 0 },
  v: { x: 0, y: radiusMm },
});

function wholeCircle({ centre, radiusMm }: OffsetCircle): ArtPath {
  const from = { x: centre.x + radiusMm, y: centre.y };
  const arc: ArtArc = { ...circleOf(centre, radiusMm), from, to: from, start: 0, turn: 2 * Math.PI };
  return { segments: [arc], isClosed: true };
}
