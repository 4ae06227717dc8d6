import { add3, cross3, dot3, rad, scale3, sub3, unit3, vec3, type Vec3 } from '../geom/vec.ts';
import type { BenchPlane, UpAxis } from './bench-contract.ts';

/** Keys that move a plane in hand, by one step. */
export type PlaneKeyMove = 'forth' | 'back' | 'lean-left' | 'lean-right' | 'lean-up' | 'lean-down';

/** A step by key, mm and degrees; with Shift a plane goes the coarse one. */
export const PLANE_STEP = { mm: 1, coarseMm: 10, deg: 5 } as const;

/** A plane that lies as flat as this (cosine to up) takes its axes from the side instead of from up. */
const LEVEL_COSINE = 0.999;

export const UPS: Readonly<Record<UpAxis, Vec3>> = { x: vec3(1, 0, 0), y: vec3(0, 1, 0), z: vec3(0, 0, 1) };

/**
 * Two axes of a plane: `u` runs level and `v` up where the plane stands; in a level plane `u` is x (z where x is up).
 * @param normal  length 1. @param up  length 1.
 */
export function planeAxes(normal: Vec3, up: Vec3): { readonly u: Vec3; readonly v: Vec3 } {
  const side = Math.abs(up.x) > LEVEL_COSINE ? UPS.z : UPS.x;
  const isLevel = Math.abs(dot3(normal, up)) > LEVEL_COSINE;
  const u = unit3(isLevel ? sub3(side, scale3(normal, dot3(side, normal))) : cross3(up, normal));
  return { u, v: cross3(normal, u) };
}

/**
 * The plane after one step by key. It leans about the two axes of the file that its normal lies least along, so that opposite keys bring it back.
 * @param mm  how far it goes along its normal.
 */
export function movedPlane(plane: BenchPlane, move: PlaneKeyMove, mm: number = PLANE_STEP.mm): BenchPlane {
  const step = rad(PLANE_STEP.deg);
  const [first, second] = leanAxes(plane.normal);
  switch (move) {
    case 'forth':
      return shiftedPlane(plane, mm);
    case 'back':
      return shiftedPlane(plane, -mm);
    case 'lean-left':
      return leaned(plane, second, -step);
    case 'lean-right':
      return leaned(plane, second, step);
    case 'lean-up':
      return leaned(plane, first, -step);
    case 'lean-down':
      return leaned(plane, first, step);
  }
}

/** The axes of space but the one the normal lies nearest to. */
function leanAxes(normal: BenchPlane['normal']): readonly [Vec3, Vec3] {
  const [x, y, z] = normal.map(Math.abs);
  if (y >= x && y >= z) return [UPS.x, UPS.z];
  return x >= z ? [UPS.z, UPS.y] : [UPS.x, UPS.y];
}

/** The plane moved along its normal. */
export function shiftedPlane(plane: BenchPlane, mm: number): BenchPlane {
  const [x, y, z] = plane.point.map((at, i) => at + mm * plane.normal[i]);
  return { ...plane, point: [x, y, z] };
}

/** Turned about an axis of length 1 (O. Rodrigues). */
function leaned(plane: BenchPlane, axis: Vec3, angle: number): BenchPlane {
  const normal = vec3(...plane.normal);
  const kept = scale3(axis, dot3(axis, normal) * (1 - Math.cos(angle)));
  const turned = add3(scale3(normal, Math.cos(angle)), scale3(cross3(axis, normal), Math.sin(angle)));
  const { x, y, z } = unit3(add3(turned, kept));
  return { ...plane, normal: [x, y, z] };
}
