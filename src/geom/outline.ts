import { layPoint, type Lay2 } from './lay-over.ts';
import type { Ring } from './ring.ts';
import { cross2, sub2, vec2, type Vec2 } from './vec.ts';

/** A straight part of an outline. */
export interface LineSegment {
  readonly kind: 'line';
  readonly from: Vec2;
  readonly to: Vec2;
}

/** A part of a circle: `turn` is the angle run through, radians, counter-clockwise > 0; at most a whole turn. */
export interface ArcSegment {
  readonly kind: 'arc';
  readonly from: Vec2;
  readonly to: Vec2;
  readonly centre: Vec2;
  readonly radius: number;
  readonly turn: number;
}

/**
 * A curve that is neither: points on the exact curve, both ends among them, so close that no chord is farther from it than `deviationMm`.
 * Length and area are those of the curve itself, not of its chords.
 */
export interface CurveSegment {
  readonly kind: 'curve';
  readonly from: Vec2;
  readonly to: Vec2;
  readonly points: readonly Vec2[];
  readonly deviationMm: number;
  readonly lengthMm: number;
  /** What the ray from the origin sweeps along it, mm², counter-clockwise > 0. */
  readonly sweptMm2: number;
}

/** Part of an outline, mm, in the piece's own plane. A chain of them runs on where the one before ends. */
export type OutlineSegment = LineSegment | ArcSegment | CurveSegment;

/** How far a curve may be from the chords that stand for it, mm. */
export const CURVE_DEVIATION_MM = 0.01;

export const line = (from: Vec2, to: Vec2): LineSegment => ({ kind: 'line', from, to });

/** Part of a circle from an angle over a turn, radians, counter-clockwise > 0. */
export function arc(centre: Vec2, radius: number, start: number, turn: number): ArcSegment {
  const at = (angle: number): Vec2 => onCircle(centre, radius, angle);
  return { kind: 'arc', from: at(start), to: at(start + turn), centre, radius, turn };
}

export const onCircle = (centre: Vec2, radius: number, angle: number): Vec2 => ({
  x: centre.x + radius * Math.cos(angle),
  y: centre.y + radius * Math.sin(angle),
});

/** The arc that runs from one point to another and turns by `turn` on its way, radians, counter-clockwise > 0, neither 0 nor a whole turn. */
export function arcBetween(from: Vec2, to: Vec2, turn: number): ArcSegment {
  // The middle lies beside the chord by half of it over tan(turn / 2), on the left of an arc that turns left by less than half.
  const half = sub2(to, from);
  const beside = 1 / (2 * Math.tan(turn / 2));
  const centre = vec2((from.x + to.x) / 2 - half.y * beside, (from.y + to.y) / 2 + half.x * beside);
  return { kind: 'arc', from, to, centre, radius: Math.hypot(half.x, half.y) / 2 / Math.abs(Math.sin(turn / 2)), turn };
}

/** A curve known by its points alone, so many that no chord is farther from it than `deviationMm`: length and area are those of the chords. */
export function curveThrough(points: readonly Vec2[], deviationMm: number): CurveSegment {
  const chords = chainThrough(points);
  return {
    kind: 'curve',
    from: points[0],
    to: points[points.length - 1],
    points,
    deviationMm,
    lengthMm: chainLength(chords),
    sweptMm2: chainSweep(chords),
  };
}

/** Straight from point to point; one segment fewer than points. */
export const chainThrough = (points: readonly Vec2[]): readonly LineSegment[] =>
  points.slice(1).map((to, i) => line(points[i], to));

/** The closed polygon through packed points or a list of them, without a repeated last one. */
export function chainRound(ring: Ring | readonly Vec2[]): readonly LineSegment[] {
  const points =
    ring instanceof Float64Array
      ? Array.from({ length: ring.length / 2 }, (_, i) => vec2(ring[2 * i], ring[2 * i + 1]))
      : ring;
  return points.map((from, i) => line(from, points[(i + 1) % points.length]));
}

export function segmentLength(segment: OutlineSegment): number {
  switch (segment.kind) {
    case 'line':
      return Math.hypot(segment.to.x - segment.from.x, segment.to.y - segment.from.y);
    case 'arc':
      return segment.radius * Math.abs(segment.turn);
    case 'curve':
      return segment.lengthMm;
  }
}

/** What the ray from the origin sweeps along a segment, mm², counter-clockwise > 0. */
export function segmentSweep(segment: OutlineSegment): number {
  if (segment.kind === 'curve') return segment.sweptMm2;
  const { from, to } = segment;
  if (segment.kind === 'line') return (from.x * to.y - to.x * from.y) / 2;
  const { centre, radius, turn } = segment;
  return (radius * radius * turn + centre.x * (to.y - from.y) - centre.y * (to.x - from.x)) / 2;
}

export const chainLength = (chain: readonly OutlineSegment[]): number =>
  chain.reduce((sum, one) => sum + segmentLength(one), 0);

/** What the ray from the origin sweeps along a chain, mm²; of a closed one that is its area, counter-clockwise > 0. */
export const chainSweep = (chain: readonly OutlineSegment[]): number =>
  chain.reduce((sum, one) => sum + segmentSweep(one), 0);

/** Points on a segment after its first, no chord farther from it than `deviationMm`; a curve keeps the points it has. */
export function segmentPoints(segment: OutlineSegment, deviationMm = CURVE_DEVIATION_MM): readonly Vec2[] {
  if (segment.kind === 'line') return [segment.to];
  if (segment.kind === 'curve') return segment.points.slice(1);
  const { centre, radius, turn, from, to } = segment;
  const step = 2 * Math.acos(Math.max(0, 1 - deviationMm / Math.max(radius, deviationMm)));
  // Never fewer than the sides of a square to a whole turn, however small the circle.
  const count = Math.max(1, Math.ceil(Math.abs(turn) / Math.min(step, Math.PI / 2)));
  const start = Math.atan2(from.y - centre.y, from.x - centre.x);
  return Array.from({ length: count }, (_, i) =>
    i + 1 === count ? to : onCircle(centre, radius, start + (turn * (i + 1)) / count),
  );
}

/** Points along an open chain, both ends among them. */
export const chainPoints = (chain: readonly OutlineSegment[], deviationMm = CURVE_DEVIATION_MM): readonly Vec2[] =>
  chain.length === 0 ? [] : [chain[0].from, ...chain.flatMap((one) => segmentPoints(one, deviationMm))];

/** A closed chain as a ring of chords, none farther from it than `deviationMm`; its first point stands last. */
export const chainRing = (chain: readonly OutlineSegment[], deviationMm = CURVE_DEVIATION_MM): Ring =>
  Float64Array.from(chain.flatMap((one) => segmentPoints(one, deviationMm)).flatMap(({ x, y }) => [x, y]));

/** The greatest distance from the end of a part to where the next begins, mm: 0, but for rounding, where a chain is closed. */
export const chainGap = (chain: readonly OutlineSegment[]): number =>
  chain.reduce((most, { to }, i) => {
    const { from } = chain[(i + 1) % chain.length];
    return Math.max(most, Math.hypot(from.x - to.x, from.y - to.y));
  }, 0);

/** The same part run through the other way. */
export function reversedSegment(segment: OutlineSegment): OutlineSegment {
  const ends = { from: segment.to, to: segment.from };
  switch (segment.kind) {
    case 'line':
      return { ...segment, ...ends };
    case 'arc':
      return { ...segment, ...ends, turn: -segment.turn };
    case 'curve':
      return { ...segment, ...ends, points: [...segment.points].reverse(), sweptMm2: -segment.sweptMm2 };
  }
}

/** The same chain run through the other way. */
export const reversedChain = (chain: readonly OutlineSegment[]): readonly OutlineSegment[] =>
  [...chain].reverse().map(reversedSegment);

/** A segment turned over where the lay says so, turned and moved; its ends keep their order, so what was turned over runs the other way round. */
export function laySegment(segment: OutlineSegment, lay: Lay2): OutlineSegment {
  const [from, to] = [layPoint(segment.from, lay), layPoint(segment.to, lay)];
  const sign = lay.isFlipped === true ? -1 : 1;
  switch (segment.kind) {
    case 'line':
      return line(from, to);
    case 'arc':
      return { ...segment, from, to, centre: layPoint(segment.centre, lay), turn: sign * segment.turn };
    case 'curve': {
      const points = segment.points.map((p) => layPoint(p, lay));
      const moved = cross2({ x: lay.x, y: lay.y }, sub2(to, from)) / 2;
      return { ...segment, from, to, points, sweptMm2: sign * segment.sweptMm2 + moved };
    }
  }
}

/** A chain laid; it runs the same way round as before, so what is turned over is also run through from its end. */
export function layChain(chain: readonly OutlineSegment[], lay: Lay2): readonly OutlineSegment[] {
  const laid = chain.map((one) => laySegment(one, lay));
  return lay.isFlipped === true ? reversedChain(laid) : laid;
}
