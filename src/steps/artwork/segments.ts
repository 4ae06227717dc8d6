import { greatestScale, mapped, type Affine } from '../../geom/affine.ts';
import { cross2, type Vec2 } from '../../geom/vec.ts';
import type { ArtArc, ArtPath, ArtSegment } from '../../model/artwork.ts';

/** Straight parts of one curve at most: a deviation far too fine for it ends there. */
const MOST_PARTS = 20_000;

/** Lengths are right to this share of themselves. */
const LENGTH_SHARE = 1e-10;
const MOST_HALVINGS = 24;

/** The point of a segment at a share of its parameter, 0 to 1. */
export function pointOn(segment: ArtSegment, share: number): Vec2 {
  if (share <= 0) return segment.from;
  if (share >= 1) return segment.to;
  switch (segment.kind) {
    case 'line':
      return {
        x: segment.from.x + share * (segment.to.x - segment.from.x),
        y: segment.from.y + share * (segment.to.y - segment.from.y),
      };
    case 'cubic': {
      const { from: a, handles, to: d } = segment;
      const [b, c] = handles;
      const s = 1 - share;
      const [p, q, r, w] = [s * s * s, 3 * s * s * share, 3 * s * share * share, share * share * share];
      return { x: p * a.x + q * b.x + r * c.x + w * d.x, y: p * a.y + q * b.y + r * c.y + w * d.y };
    }
    case 'arc':
      return onEllipse(segment, segment.start + share * segment.turn);
  }
}

/** The point of an arc's ellipse at an angle of its parameter, radians. */
export function onEllipse({ centre, u, v }: ArtArc, angle: number): Vec2 {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return { x: centre.x + c * u.x + s * v.x, y: centre.y + c * u.y + s * v.y };
}

/**
 * Corners of a segment after its start, its end among them, so close that no straight part is farther than the deviation from the curve.
 * Cubics: by the greatest second derivative over 8 n² (Filip, Magedson and Markot 1986); arcs: by the rise of a chord on the unit circle, which an
 * affine map enlarges by its greater singular value at most.
 * @param deviationMm  > 0, else RangeError.
 */
export function flatSegment(segment: ArtSegment, deviationMm: number): Vec2[] {
  if (!(deviationMm > 0)) throw new RangeError(`deviation ${deviationMm} mm`);
  const count = Math.min(MOST_PARTS, Math.max(1, Math.ceil(partsFor(segment, deviationMm))));
  const points: Vec2[] = [];
  for (let i = 1; i <= count; i += 1) points.push(pointOn(segment, i / count));
  return points;
}

function partsFor(segment: ArtSegment, deviationMm: number): number {
  if (segment.kind === 'line') return 1;
  if (segment.kind === 'arc') {
    const radius = greatestScale([segment.u.x, segment.u.y, segment.v.x, segment.v.y, 0, 0]);
    const step = 2 * Math.acos(Math.max(0, 1 - deviationMm / radius));
    // A whole turn is never fewer than a square's sides.
    return Math.max(Math.abs(segment.turn) / Math.max(step, 1e-9), Math.abs(segment.turn) / (Math.PI / 2 + 1e-9));
  }
  const { from: a, handles, to: d } = segment;
  const [b, c] = handles;
  const bend = Math.max(
    Math.hypot(a.x - 2 * b.x + c.x, a.y - 2 * b.y + c.y),
    Math.hypot(b.x - 2 * c.x + d.x, b.y - 2 * c.y + d.y),
  );
  return Math.sqrt((6 * bend) / (8 * deviationMm));
}

/** Packed corners of a path; a closed one repeats none, and none stands twice in a row. */
export function flatPath({ segments, isClosed }: ArtPath, deviationMm: number): Float64Array {
  const points: number[] = [];
  const put = ({ x, y }: Vec2): void => {
    const n = points.length;
    if (n === 0 || points[n - 2] !== x || points[n - 1] !== y) points.push(x, y);
  };
  if (segments.length > 0) put(segments[0].from);
  for (const segment of segments) for (const point of flatSegment(segment, deviationMm)) put(point);
  const n = points.length;
  if (isClosed && n > 2 && points[0] === points[n - 2] && points[1] === points[n - 1]) points.length = n - 2;
  return Float64Array.from(points);
}

/** True length, mm, to 1e-10 of itself. */
export function segmentLength(segment: ArtSegment): number {
  const { from, to } = segment;
  if (segment.kind === 'line') return Math.hypot(to.x - from.x, to.y - from.y);
  if (segment.kind === 'arc') {
    const radius = circleRadius(segment);
    if (radius !== null) return radius * Math.abs(segment.turn);
  }
  const speed = (share: number): number => speedOn(segment, share);
  const whole = gauss(speed, 0, 1);
  return halved(speed, 0, 1, whole, LENGTH_SHARE * whole, 0);
}

export const pathLength = (path: ArtPath): number =>
  path.segments.reduce((sum, segment) => sum + segmentLength(segment), 0);

/** Radius of an arc of a circle, mm; null where it is of an ellipse. */
export function circleRadius({ u, v }: ArtArc): number | null {
  const [a, b] = [Math.hypot(u.x, u.y), Math.hypot(v.x, v.y)];
  const same = 1e-12 * Math.max(a, b);
  return Math.abs(a - b) <= same && Math.abs(u.x * v.x + u.y * v.y) <= same * a ? (a + b) / 2 : null;
}

function speedOn(segment: ArtSegment, t: number): number {
  if (segment.kind === 'arc') {
    const angle = segment.start + t * segment.turn;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const { u, v } = segment;
    return Math.abs(segment.turn) * Math.hypot(c * v.x - s * u.x, c * v.y - s * u.y);
  }
  if (segment.kind === 'line') return Math.hypot(segment.to.x - segment.from.x, segment.to.y - segment.from.y);
  const { from: a, handles, to: d } = segment;
  const [b, c] = handles;
  const s = 1 - t;
  const [p, q, r] = [3 * s * s, 6 * s * t, 3 * t * t];
  return Math.hypot(
    p * (b.x - a.x) + q * (c.x - b.x) + r * (d.x - c.x),
    p * (b.y - a.y) + q * (c.y - b.y) + r * (d.y - c.y),
  );
}

/** Knots and weights of Gauss and Legendre's rule of five points on -1 to 1 (Abramowitz and Stegun, table 25.4). */
const KNOTS = [0, 0.5384693101056831, 0.906179845938664] as const;
const WEIGHTS = [0.5688888888888889, 0.47862867049936647, 0.23692688505618908] as const;

function gauss(f: (t: number) => number, from: number, to: number): number {
  const [middle, half] = [(from + to) / 2, (to - from) / 2];
  let sum = WEIGHTS[0] * f(middle);
  for (let i = 1; i < 3; i += 1) sum += WEIGHTS[i] * (f(middle - half * KNOTS[i]) + f(middle + half * KNOTS[i]));
  return half * sum;
}

function halved(
  f: (t: number) => number,
  from: number,
  to: number,
  whole: number,
  within: number,
  depth: number,
): number {
  const middle = (from + to) / 2;
  const [left, right] = [gauss(f, from, middle), gauss(f, middle, to)];
  if (depth >= MOST_HALVINGS || Math.abs(left + right - whole) <= within) return left + right;
  return halved(f, from, middle, left, within, depth + 1) + halved(f, middle, to, right, within, depth + 1);
}

/** What the ray from the origin sweeps along a segment, mm², counter-clockwise > 0: closed forms. */
export function sweptArea(segment: ArtSegment): number {
  const { from: a, to: d } = segment;
  switch (segment.kind) {
    case 'line':
      return cross2(a, d) / 2;
    case 'cubic': {
      const [b, c] = segment.handles;
      return (
        (6 * cross2(a, b) + 3 * cross2(a, c) + cross2(a, d) + 3 * cross2(b, c) + 3 * cross2(b, d) + 6 * cross2(c, d)) /
        20
      );
    }
    case 'arc': {
      const { centre, u, v, turn } = segment;
      return (cross2(centre, { x: d.x - a.x, y: d.y - a.y }) + cross2(u, v) * turn) / 2;
    }
  }
}

/** Signed area of a closed path, or of an open one closed straight, mm², counter-clockwise > 0; sums about its first point. */
export function pathArea({ segments }: ArtPath): number {
  if (segments.length === 0) return 0;
  const { x, y } = segments[0].from;
  const near: Affine = [1, 0, 0, 1, -x, -y];
  return segments.reduce((sum, segment) => sum + sweptArea(mappedSegment(near, segment)), 0);
}

/** A segment through an affine map, which is exact for each kind. */
export function mappedSegment(map: Affine, segment: ArtSegment): ArtSegment {
  const [from, to] = [mapped(map, segment.from), mapped(map, segment.to)];
  switch (segment.kind) {
    case 'line':
      return { kind: 'line', from, to };
    case 'cubic':
      return { kind: 'cubic', from, handles: [mapped(map, segment.handles[0]), mapped(map, segment.handles[1])], to };
    case 'arc': {
      const linear: Affine = [map[0], map[1], map[2], map[3], 0, 0];
      return {
        ...segment,
        from,
        to,
        centre: mapped(map, segment.centre),
        u: mapped(linear, segment.u),
        v: mapped(linear, segment.v),
      };
    }
  }
}

export const mappedPath = (map: Affine, { segments, isClosed }: ArtPath): ArtPath => ({
  segments: segments.map((segment) => mappedSegment(map, segment)),
  isClosed,
});

/** The same line run the other way. */
export function reversedPath({ segments, isClosed }: ArtPath): ArtPath {
  return { segments: segments.map(reversedSegment).reverse(), isClosed };
}

function reversedSegment(segment: ArtSegment): ArtSegment {
  const { from: to, to: from } = segment;
  switch (segment.kind) {
    case 'line':
      return { kind: 'line', from, to };
    case 'cubic':
      return { kind: 'cubic', from, handles: [segment.handles[1], segment.handles[0]], to };
    case 'arc':
      return { ...segment, from, to, start: segment.start + segment.turn, turn: -segment.turn };
  }
}
