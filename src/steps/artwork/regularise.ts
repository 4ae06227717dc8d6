import type { Vec2 } from '../../geom/vec.ts';
import type { ArtArc, ArtPath, ArtSegment } from '../../model/artwork.ts';
import { circleRadius, flatSegment } from './segments.ts';

/** What was made regular, and how far the line moved at most, mm. */
export interface Regularised {
  readonly path: ArtPath;
  readonly changes: readonly RegularChange[];
}

export interface RegularChange {
  readonly to: 'circle' | 'arc' | 'straight line';
  /** Of the circle or arc, mm; left out for a straight line. */
  readonly radiusMm?: number;
  readonly deviationMm: number;
}

/** Samples stand this many times closer than the limit asks for. */
const FINER = 20;
/** Places looked at between two corners of a straight part. */
const PLACES = 8;
/** An arc is of a radius at most so many times its chord, else it is a straight line. */
const FLATTEST = 1000;
/** Parts of a run that is tried as one. */
const LONGEST_RUN = 400;

/**
 * Puts a circle, arcs or straight lines in the place of parts that are nearly so: first the whole of a closed line as a circle, then the longest runs
 * of parts, each between its own ends, a straight line before an arc. Nothing moves farther than the limit; what was exact stays.
 * @param limitMm  > 0.
 */
export function regularise(path: ArtPath, limitMm: number): Regularised {
  const whole = path.isClosed ? asCircle(path, limitMm) : null;
  if (whole !== null) return whole;
  const segments: ArtSegment[] = [];
  const changes: RegularChange[] = [];
  const { segments: given } = path;
  for (let i = 0; i < given.length;) {
    const found = longestRun(given, i, limitMm);
    if (found === null) {
      segments.push(given[i]);
      i += 1;
    } else {
      segments.push(found.segment);
      if (found.change.deviationMm > 0) changes.push(found.change);
      i = found.next;
    }
  }
  return { path: { segments, isClosed: path.isClosed }, changes };
}

/** The circle with least squared distances (Kasa 1976, in one step about the middle), where no place is farther than the limit. */
function asCircle({ segments }: ArtPath, limitMm: number): Regularised | null {
  if (segments.length === 1 && segments[0].kind === 'arc' && circleRadius(segments[0]) !== null) return null;
  const points = placesOf(segments, limitMm);
  const n = points.length;
  // A square, or any figure of few straight sides, is no circle however large the limit.
  if (segments.every(({ kind }) => kind === 'line') && segments.length < 8) return null;
  const middle = {
    x: points.reduce((sum, { x }) => sum + x, 0) / n,
    y: points.reduce((sum, { y }) => sum + y, 0) / n,
  };
  let [sxx, sxy, syy, sxz, syz, sz] = [0, 0, 0, 0, 0, 0];
  for (const p of points) {
    const [x, y] = [p.x - middle.x, p.y - middle.y];
    const z = x * x + y * y;
    [sxx, sxy, syy] = [sxx + x * x, sxy + x * y, syy + y * y];
    [sxz, syz, sz] = [sxz + x * z, syz + y * z, sz + z];
  }
  const det = sxx * syy - sxy * sxy;
  if (!(det > 0)) return null;
  const [cx, cy] = [(sxz * syy - syz * sxy) / (2 * det), (syz * sxx - sxz * sxy) / (2 * det)];
  const centre = { x: middle.x + cx, y: middle.y + cy };
  const distances = points.map((p) => Math.hypot(p.x - centre.x, p.y - centre.y));
  const [least, most] = [Math.min(...distances), Math.max(...distances)];
  const radius = (least + most) / 2;
  const deviationMm = (most - least) / 2;
  if (!(deviationMm <= limitMm) || deviationMm > radius / 4) return null;
  const sign = turnsLeft(points) ? 1 : -1;
  const from = { x: centre.x + radius, y: centre.y };
  const circle: ArtArc = {
    kind: 'arc',
    from,
    to: from,
    centre,
    u: { x: radius, y: 0 },
    v: { x: 0, y: radius },
    start: 0,
    turn: sign * 2 * Math.PI,
  };
  return {
    path: { segments: [circle], isClosed: true },
    changes: [{ to: 'circle', radiusMm: radius, deviationMm }],
  };
}

function turnsLeft(points: readonly Vec2[]): boolean {
  let twice = 0;
  for (const [i, a] of points.entries()) {
    const b = points[(i + 1) % points.length];
    twice += a.x * b.y - a.y * b.x;
  }
  return twice > 0;
}

interface Run {
  readonly segment: ArtSegment;
  readonly change: RegularChange;
  readonly next: number;
}

/** The longest run from a part on that is a straight line or an arc within the limit; null where the part stays as it is. */
function longestRun(segments: readonly ArtSegment[], first: number, limitMm: number): Run | null {
  let best: Run | null = null;
  const points: Vec2[] = [segments[first].from];
  const most = Math.min(segments.length, first + LONGEST_RUN);
  for (let last = first; last < most; last += 1) {
    points.push(...placesOf([segments[last]], limitMm).slice(1));
    const [from, to] = [segments[first].from, segments[last].to];
    const isOne = last === first;
    if (isOne && (segments[first].kind === 'line' || isCircular(segments[first]))) continue;
    const straight = asStraight(points, from, to);
    const arc = straight <= limitMm ? null : asArc(points, from, to);
    if (straight <= limitMm)
      best = {
        segment: { kind: 'line', from, to },
        change: { to: 'straight line', deviationMm: straight },
        next: last + 1,
      };
    else if (arc !== null && arc.change.deviationMm <= limitMm && !isLinesOnly(segments, first, last))
      best = { ...arc, next: last + 1 };
    else if (last > first) break;
  }
  return best;
}

const isCircular = (segment: ArtSegment): boolean => segment.kind === 'arc' && circleRadius(segment) !== null;

/** Corners of up to three straight sides lie on some circle by chance. */
const isLinesOnly = (segments: readonly ArtSegment[], first: number, last: number): boolean =>
  last - first < 3 && segments.slice(first, last + 1).every(({ kind }) => kind === 'line');

/** Farthest of the points from the straight line between the ends, mm; infinite where they run back. */
function asStraight(points: readonly Vec2[], from: Vec2, to: Vec2): number {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length === 0) return Infinity;
  const [dx, dy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  let [most, before] = [0, 0];
  for (const { x, y } of points) {
    const along = (x - from.x) * dx + (y - from.y) * dy;
    if (along < before - 1e-9 * length) return Infinity;
    before = along;
    most = Math.max(most, Math.abs((x - from.x) * dy - (y - from.y) * dx));
  }
  return most;
}

/** The arc between two ends with least squares of distances, by its centre on the line half-way between them. */
function asArc(points: readonly Vec2[], from: Vec2, to: Vec2): Omit<Run, 'next'> | null {
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  if (chord === 0) return null;
  const [mx, my] = [(from.x + to.x) / 2, (from.y + to.y) / 2];
  const [nx, ny] = [-(to.y - from.y) / chord, (to.x - from.x) / chord];
  const square = (chord / 2) ** 2;
  let [top, bottom] = [0, 0];
  for (const { x, y } of points) {
    const [px, py] = [x - mx, y - my];
    const off = 2 * (px * nx + py * ny);
    top += (px * px + py * py - square) * off;
    bottom += off * off;
  }
  if (!(bottom > 0)) return null;
  const height = top / bottom;
  const centre = { x: mx + height * nx, y: my + height * ny };
  const radius = Math.hypot(chord / 2, height);
  if (!(radius <= FLATTEST * chord)) return null;
  const middle = points[Math.floor(points.length / 2)];
  const start = Math.atan2(from.y - centre.y, from.x - centre.x);
  const swing = (p: Vec2, sign: number): number => {
    const angle = sign * (Math.atan2(p.y - centre.y, p.x - centre.x) - start);
    return ((angle % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
  };
  const sign = swing(middle, 1) <= swing(to, 1) ? 1 : -1;
  const turn = swing(to, sign);
  let [most, before] = [0, 0];
  for (const p of points.slice(1, -1)) {
    const angle = swing(p, sign);
    // What runs back, or beyond its end, is no arc.
    if (angle < before - 1e-6 || angle > turn + 1e-6) return null;
    before = angle;
    most = Math.max(most, Math.abs(Math.hypot(p.x - centre.x, p.y - centre.y) - radius));
  }
  const segment: ArtArc = {
    kind: 'arc',
    from,
    to,
    centre,
    u: { x: radius, y: 0 },
    v: { x: 0, y: radius },
    start,
    turn: sign * turn,
  };
  return { segment, change: { to: 'arc', radiusMm: radius, deviationMm: most } };
}

/** Places all along segments, their ends among them. */
function placesOf(segments: readonly ArtSegment[], limitMm: number): Vec2[] {
  const places: Vec2[] = [segments[0].from];
  for (const segment of segments) {
    if (segment.kind === 'line') {
      for (let k = 1; k <= PLACES; k += 1)
        places.push({
          x: segment.from.x + ((segment.to.x - segment.from.x) * k) / PLACES,
          y: segment.from.y + ((segment.to.y - segment.from.y) * k) / PLACES,
        });
    } else places.push(...flatSegment(segment, limitMm / FINER));
  }
  return places;
}
