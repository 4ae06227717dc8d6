import { dot3, length3, sub3, type Vec3 } from '../../geom/vec.ts';
import type { Surface } from '../surface.ts';
import type { MeshLine, MeshPoint } from './mesh-line.ts';
import { placeOf, pointInTriangle, sharedTriangle, weightsIn } from './mesh-point.ts';

/** A line laid out for walks along it. A closed line has one place more than it has points: its first again. */
export interface LaidLine {
  readonly points: readonly MeshPoint[];
  readonly places: readonly Vec3[];
  /** Way from the start to each point, mm. */
  readonly way: Float64Array;
  readonly lengthMm: number;
}

export function layLine(surface: Surface, { points, closed }: MeshLine): LaidLine {
  const all = closed && points.length > 0 ? [...points, points[0]] : points;
  const places = all.map((p) => placeOf(surface, p));
  const way = new Float64Array(all.length);
  for (let i = 1; i < all.length; i += 1) way[i] = way[i - 1] + length3(sub3(places[i], places[i - 1]));
  return { points: all, places, way, lengthMm: all.length === 0 ? 0 : way[all.length - 1] };
}

/** The piece, by the number of its first point, that holds the place `mm` along; the last one beyond the end. */
export function pieceAt({ way }: LaidLine, mm: number): number {
  let [from, to] = [0, way.length - 1];
  while (to - from > 1) {
    const middle = (from + to) >> 1;
    if (way[middle] <= mm) from = middle;
    else to = middle;
  }
  return from;
}

/** The point `mm` along a line; its ends beyond them. */
export function pointAlong(surface: Surface, line: LaidLine, mm: number): MeshPoint {
  if (line.points.length === 1 || mm <= 0) return line.points[0];
  if (mm >= line.lengthMm) return line.points[line.points.length - 1];
  const i = pieceAt(line, mm);
  const size = line.way[i + 1] - line.way[i];
  return pointBetween(surface, line.points[i], line.points[i + 1], size > 0 ? (mm - line.way[i]) / size : 0);
}

/** The point at a share of the straight piece between two points that share a triangle. */
export function pointBetween(surface: Surface, p: MeshPoint, q: MeshPoint, share: number): MeshPoint {
  if (share <= 0) return p;
  if (share >= 1) return q;
  const t = sharedTriangle(surface, p, q);
  const { topology, triangles } = surface;
  const [a, b] = [weightsIn(topology, triangles, p, t), weightsIn(topology, triangles, q, t)];
  if (t < 0 || a === null || b === null) throw new RangeError('line: a piece outside every triangle');
  const mix = (k: number): number => a[k] + share * (b[k] - a[k]);
  return pointInTriangle(surface, t, [mix(0), mix(1), mix(2)]);
}

/** The place of a line nearest to a place in space, of those between two ways along it. */
export interface NearestOnLine {
  /** mm along the line. */
  readonly mm: number;
  /** Piece, by the number of its first point, and share of it. */
  readonly piece: number;
  readonly share: number;
  /** Distance in space, mm. */
  readonly distanceMm: number;
}

/** @param from @param to ways along the line that are looked between, mm; whole pieces are looked at. */
export function nearestAlong(line: LaidLine, p: Vec3, from = 0, to = line.lengthMm): NearestOnLine {
  const last = line.points.length - 2;
  let best: NearestOnLine = { mm: 0, piece: 0, share: 0, distanceMm: length3(sub3(p, line.places[0])) };
  if (last < 0) return best;
  best = { ...best, distanceMm: Infinity };
  for (let i = pieceAt(line, Math.max(0, from)); i <= last && line.way[i] <= to; i += 1) {
    const [a, b] = [line.places[i], line.places[i + 1]];
    const [wx, wy, wz] = [b.x - a.x, b.y - a.y, b.z - a.z];
    const [px, py, pz] = [p.x - a.x, p.y - a.y, p.z - a.z];
    const square = wx * wx + wy * wy + wz * wz;
    const share = square > 0 ? Math.min(1, Math.max(0, (px * wx + py * wy + pz * wz) / square)) : 0;
    const distanceMm = Math.hypot(px - share * wx, py - share * wy, pz - share * wz);
    if (distanceMm < best.distanceMm)
      best = { mm: line.way[i] + share * Math.sqrt(square), piece: i, share, distanceMm };
  }
  return best;
}

/** Turn of a line at each inner point, radians: angle between the pieces before and after it in space; the figure that shows how jagged it is. */
export function turnsOf({ places }: LaidLine): number[] {
  const turns: number[] = [];
  for (let i = 1; i + 1 < places.length; i += 1) {
    const [a, b] = [sub3(places[i], places[i - 1]), sub3(places[i + 1], places[i])];
    const sizes = length3(a) * length3(b);
    turns.push(sizes > 0 ? Math.acos(Math.min(1, Math.max(-1, dot3(a, b) / sizes))) : 0);
  }
  return turns;
}
