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
  /** Per triangle that was looked at the farthest of its corners and its middle, mm. */
  readonly offsets: readonly number[];
  /** mm². */
  readonly areas: readonly number[];
}

/**
 * Holds a surface, mirrored, against itself.
 * @param isPaired tells of triangles that lie on the surface without a question.
 * @param stride   every so many triangles are looked at, >= 1.
 */
export function* mirrorOffsetSteps(
  mesh: Mesh,
  plane: MirrorPlane,
  isPaired: (triangle: number) => boolean,
  stride: number,
): Stepwise<MirrorOffsets> {
  const tree = surfaceTreeOf(mesh);
  yield;
  const { positions, triangles } = mesh;
  const off = (p: Vec3): number => tree.nearest(reflect(plane, p))?.distance ?? Infinity;
  const corners = new Float64Array(positions.length / 3).fill(-1);
  const offCorner = (v: number): number => {
    if (corners[v] < 0) corners[v] = off(pointAt3(positions, v));
    return corners[v];
  };
  const offsets: number[] = [];
  const areas: number[] = [];
  for (let t = 0; t < triangles.length / 3; t += stride) {
    if (offsets.length % STRETCH_TRIANGLES === STRETCH_TRIANGLES - 1) yield;
    areas.push(triangleArea(positions, triangles, t));
    const [a, b, c] = [triangles[3 * t], triangles[3 * t + 1], triangles[3 * t + 2]];
    offsets.push(
      isPaired(t) ? 0 : Math.max(offCorner(a), offCorner(b), offCorner(c), off(vec3(...triangleCentre(mesh, t)))),
    );
  }
  return { offsets, areas };
}

/** Share of the area that lies on the surface within `tolerance`, mm; 0 to 1. */
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
