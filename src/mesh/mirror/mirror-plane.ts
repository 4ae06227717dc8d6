import { dot3, scale3, sub3, unit3, vec3, type Vec3 } from '../../geom/vec.ts';
import type { Plane } from '../surface.ts';

/** A plane as the set of points with `normal . x = at`. */
export interface MirrorPlane {
  /** Length 1. Of the two that serve, the one whose largest component is positive, so that one plane has one name. */
  readonly normal: Vec3;
  /** mm along the normal from the origin. */
  readonly at: number;
}

/** @param normal square to the plane, any length but 0. @param at of the plane's points along the unit normal, mm. */
export function mirrorPlane(normal: Vec3, at: number): MirrorPlane {
  const unit = unit3(normal);
  const parts = [unit.x, unit.y, unit.z];
  const largest = parts.reduce((best, part) => (Math.abs(part) > Math.abs(best) + EVEN ? part : best), 0);
  const sign = largest < 0 ? -1 : 1;
  // No zero with a minus sign, which would be another number to whoever compares.
  return { normal: vec3(sign * unit.x + 0, sign * unit.y + 0, sign * unit.z + 0), at: sign * at + 0 };
}

/** Components that differ by less are even: then the first of them decides the sign. Far over rounding (1e-16). */
const EVEN = 1e-9;

/** @param plane with a normal of any length but 0, else RangeError. */
export function mirrorPlaneFrom({ point, normal }: Plane): MirrorPlane {
  const unit = unit3(normal);
  if (!(dot3(unit, unit) > 0)) throw new RangeError('mirrorPlaneFrom: a normal without length');
  return mirrorPlane(unit, dot3(unit, point));
}

/** The plane with the point of it that lies nearest to another. */
export const planeNear = ({ normal, at }: MirrorPlane, point: Vec3): Plane => ({
  point: sub3(point, scale3(normal, dot3(normal, point) - at)),
  normal,
});

/** The mirror image of a point. */
export const reflect = ({ normal, at }: MirrorPlane, p: Vec3): Vec3 =>
  sub3(p, scale3(normal, 2 * (dot3(normal, p) - at)));

/** The mirror image of a direction. */
export const reflectDirection = ({ normal }: MirrorPlane, d: Vec3): Vec3 =>
  sub3(d, scale3(normal, 2 * dot3(normal, d)));
