import type { Vec2 } from '../../geom/vec.ts';

/** A line of straight parts with its lengths, to walk along. */
export interface WalkedLine {
  readonly points: Float64Array;
  /** Length up to each point, mm. */
  readonly stations: Float64Array;
}

export function walkedLine(points: Float64Array): WalkedLine {
  const stations = new Float64Array(points.length / 2);
  for (let i = 1; i < stations.length; i += 1) {
    stations[i] =
      stations[i - 1] + Math.hypot(points[2 * i] - points[2 * i - 2], points[2 * i + 1] - points[2 * i - 1]);
  }
  return { points, stations };
}

export const lengthOf = ({ stations }: WalkedLine): number => stations[stations.length - 1];

/** The point at a length along the line; its ends beyond them. */
export function pointAlong({ points, stations }: WalkedLine, s: number): Vec2 {
  let i = 0;
  while (i + 2 < stations.length && stations[i + 1] < s) i += 1;
  const length = stations[i + 1] - stations[i];
  const f = length > 0 ? Math.min(1, Math.max(0, (s - stations[i]) / length)) : 0;
  return {
    x: points[2 * i] + f * (points[2 * i + 2] - points[2 * i]),
    y: points[2 * i + 1] + f * (points[2 * i + 3] - points[2 * i + 1]),
  };
}

/** A stretch of line seen as one chord: its middle, its direction and the way to the right of it, both of length 1. */
export interface Chord {
  readonly middle: Vec2;
  readonly along: Vec2;
  readonly right: Vec2;
}

/** The chord over `width` mm about a length along the line, or null where the line has no length. */
export function chordAt(line: WalkedLine, s: number, width: number): Chord | null {
  const [a, b] = [pointAlong(line, s - width / 2), pointAlong(line, s + width / 2)];
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  if (!(length > 0)) return null;
  const along = { x: (b.x - a.x) / length, y: (b.y - a.y) / length };
  const middle = pointAlong(line, s);
  return { middle, along, right: { x: along.y, y: -along.x } };
}

/** Angle of words along a direction, turned so that they read from below or from the right, radians in (-90, 90] degrees. */
export function readableAngle(along: Vec2): number {
  const angle = Math.atan2(along.y, along.x);
  // A hair past upright still reads from the right.
  if (angle > Math.PI / 2 + UPRIGHT_RAD) return angle - Math.PI;
  if (angle <= -Math.PI / 2 + UPRIGHT_RAD) return angle + Math.PI;
  return angle;
}

/** Directions this near straight up or down count as upright, radians. */
const UPRIGHT_RAD = 1e-6;
