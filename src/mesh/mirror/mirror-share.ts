import type { Stepwise } from '../../base/stepwise.ts';
import { dot3, pointAt3, vec3, type Vec3 } from '../../geom/vec.ts';
import { triangleArea, triangleCentre } from '../measure.ts';
import type { Mesh } from '../mesh.ts';
import { surfaceTreeOf } from '../surface-tree.ts';
import { reflect, type MirrorPlane } from './mirror-plane.ts';

/** Triangles held against the surface in one stretch: a few milliseconds. */
const STRETCH_TRIANGLES = 256;

/** Least share of the area that lies clearly to the sides of the plane: a sheet is not its own mirror image in the plane it lies in. */
const LEAST_ASIDE_SHARE = 0.5;

/** How far mirror images of triangles lie from the surface. */
export interface MirrorOffsets {
  /** Per triangle that was looked at the farthest of its corners and its middle, mm; told as it was asked for. */
  readonly offsets: readonly number[];
  /** mm². */
  readonly areas: readonly number[];
}

/** What is asked of the mirror image of a surface. */
export interface MirrorQuestion {
  /** Under `near` mm all is near enough and told as something under it; over `most` mm all is far and told as Infinity. */
  readonly near: number;
  readonly most: number;
  /** Every so many triangles are looked at, >= 1. */
  readonly stride: number;
  /** Tells of triangles that lie on the surface without a question. */
  readonly isPaired: (triangle: number) => boolean;
  /** Share of the area of those looked at from which on it is done when that much is farther than `most`; the rest is told as far, too. */
  readonly lostShare: number;
}

/** Holds a surface, mirrored, against itself. */
export function* mirrorOffsetSteps(
  mesh: Mesh,
  plane: MirrorPlane,
  { near, most, stride, isPaired, lostShare }: MirrorQuestion,
): Stepwise<MirrorOffsets> {
  const tree = surfaceTreeOf(mesh);
  yield;
  const { positions, triangles } = mesh;
  const off = (p: Vec3): number => tree.distanceBetween(reflect(plane, p), near, most);
  const corners = new Float64Array(positions.length / 3).fill(-1);
  const offCorner = (v: number): number => {
    if (corners[v] < 0) corners[v] = off(pointAt3(positions, v));
    return corners[v];
  };
  const offOf = (t: number): number => {
    let worst = off(vec3(...triangleCentre(mesh, t)));
    // One place too far settles it.
    for (let h = 3 * t; h < 3 * t + 3 && worst < Infinity; h += 1) worst = Math.max(worst, offCorner(triangles[h]));
    return worst;
  };
  const looked = Array.from({ length: Math.ceil(triangles.length / 3 / stride) }, (_, i) => i * stride);
  const areas = looked.map((t) => triangleArea(positions, triangles, t));
  const enough = lostShare * areas.reduce((sum, own) => sum + own, 0);
  const offsets: number[] = [];
  let lost = 0;
  for (const [i, t] of looked.entries()) {
    if (i % STRETCH_TRIANGLES === STRETCH_TRIANGLES - 1) yield;
    const worst = lost > enough ? Infinity : isPaired(t) ? 0 : offOf(t);
    if (worst === Infinity) lost += areas[i];
    offsets.push(worst);
  }
  return { offsets, areas };
}

/** Share of the area that lies on the surface within `tolerance`, mm, from `near` to `most`; 0 to 1. */
export function shareWithin({ offsets, areas }: MirrorOffsets, tolerance: number): number {
  let [matched, area] = [0, 0];
  offsets.forEach((off, i) => {
    area += areas[i];
    if (off <= tolerance) matched += areas[i];
  });
  return area > 0 ? matched / area : 0;
}

/** Whether so much of the surface lies in the plane that mirroring says nothing. */
export function isAlong(mesh: Mesh, { normal, at }: MirrorPlane, tolerance: number): boolean {
  let [aside, area] = [0, 0];
  for (let t = 0; t < mesh.triangles.length / 3; t += 1) {
    const own = triangleArea(mesh.positions, mesh.triangles, t);
    area += own;
    if (Math.abs(dot3(normal, vec3(...triangleCentre(mesh, t))) - at) > tolerance) aside += own;
  }
  return aside < LEAST_ASIDE_SHARE * area;
}
