import { pointAlong } from '../../mesh/lines/along-line.ts';
import { placeOf, sharedTriangle, weightsIn } from '../../mesh/lines/mesh-point.ts';
import type { MeshPoint } from '../../mesh/lines/mesh-line.ts';
import type { Surface } from '../../mesh/surface.ts';
import { partAt } from './develop-line.ts';
import type { LineTurning } from './line-turning.ts';
import { smoothSeries, smoothWeight } from './smooth-series.ts';
import { vertexTurns } from './vertex-turns.ts';

/** How a strip is bent over its faces and twisted along a line, at even ways. */
export interface StripBend {
  readonly ways: Float64Array;
  /** Curvature of the surface along the line, 1/mm, convex > 0. */
  readonly bend: Float64Array;
  /** How fast the normal turns about the line, radians in a mm; clockwise seen along it > 0. */
  readonly twist: Float64Array;
}

const STATIONS_A_WAVE = 16;
const FEWEST = 24;
const MOST = 4000;

/**
 * Bend and twist along a stretch of a line: the normals of the surface (of its corners, mixed in between) and the line's places are smoothed alike, and the
 * normal's change is parted into what bends and what twists: `n' = bend t - twist n x t` (Darboux).
 * @param waveMm  what is shorter is smoothed away: foam does not bend over less.
 */
export function stripBend(
  surface: Surface,
  { laid, line }: LineTurning,
  fromMm: number,
  toMm: number,
  waveMm: number,
): StripBend {
  const whole = laid.lengthMm;
  const count = Math.min(MOST, Math.max(FEWEST, Math.ceil((STATIONS_A_WAVE * (toMm - fromMm)) / waveMm)));
  const step = (toMm - fromMm) / count;
  const on = line.closed ? Math.min(count, Math.ceil((2 * waveMm) / step)) : 0;
  const all = count + 1 + 2 * on;
  const rows = [0, 1, 2, 3, 4, 5].map(() => new Float64Array(all));
  for (let i = 0; i < all; i += 1) {
    const way = fromMm + (i - on) * step;
    const open = line.closed ? ((way % whole) + whole) % whole : Math.min(whole, Math.max(0, way));
    const p = pointAlong(surface, laid, open);
    const place = placeOf(surface, p);
    const normal = normalAt(surface, p, laid.points[partAt(laid.way, open)]);
    for (const [k, value] of [place.x, place.y, place.z, ...normal].entries()) rows[k][i] = value;
  }
  const smooth = smoothSeries(rows, smoothWeight(waveMm / step));
  const [bend, twist] = [new Float64Array(count + 1), new Float64Array(count + 1)];
  for (let i = 0; i <= count; i += 1) {
    const c = Math.min(all - 2, Math.max(1, i + on));
    const change = smooth.map((row) => (row[c + 1] - row[c - 1]) / 2);
    const n = [3, 4, 5].map((k) => smooth[k][c]);
    const along = Math.hypot(change[0], change[1], change[2]);
    const size = Math.hypot(n[0], n[1], n[2]);
    if (!(along > 0 && size > 0)) continue;
    const t = [0, 1, 2].map((k) => change[k] / along);
    const turn = [3, 4, 5].map((k) => change[k] / (along * size));
    const beside = [0, 1, 2].map((k) => (n[(k + 1) % 3] * t[(k + 2) % 3] - n[(k + 2) % 3] * t[(k + 1) % 3]) / size);
    bend[i] = turn[0] * t[0] + turn[1] * t[1] + turn[2] * t[2];
    twist[i] = -(turn[0] * beside[0] + turn[1] * beside[1] + turn[2] * beside[2]);
  }
  return { ways: Float64Array.from({ length: count + 1 }, (_, i) => fromMm + i * step), bend, twist };
}

/** Normal of the surface at a point, mixed from those of its corners. @param near a point of the line that shares a triangle with it. */
function normalAt(surface: Surface, p: MeshPoint, near: MeshPoint): readonly [number, number, number] {
  const { normals } = vertexTurns(surface);
  if (p.at === 'vertex') return [normals[3 * p.vertex], normals[3 * p.vertex + 1], normals[3 * p.vertex + 2]];
  const { topology, triangles } = surface;
  const t = p.at === 'triangle' ? p.triangle : sharedTriangle(surface, p, near);
  const weights = t < 0 ? null : weightsIn(topology, triangles, p, t);
  if (weights === null) return [0, 0, 0];
  const mix = (axis: number): number =>
    [0, 1, 2].reduce((sum, k) => sum + weights[k] * normals[3 * triangles[3 * t + k] + axis], 0);
  return [mix(0), mix(1), mix(2)];
}
