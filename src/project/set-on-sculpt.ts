import type { PartId } from '../base/ids.ts';
import { composed4, move4, placedPoints4, undone4, type Matrix4 } from '../geom/matrix4.ts';
import { add3, cross3, pointAt3, scale3, unit3, vec3, type Vec3 } from '../geom/vec.ts';
import { boxOfPoints3 } from '../mesh/measure.ts';
import type { Triple } from '../model/girth.ts';
import type { Command } from './commands.ts';
import { addJoin } from './joins-commands.ts';
import { changePlain } from './plain-commands.ts';

/** A place on a surface, in the space of the surface, mm. */
export interface SetPlace {
  readonly point: Triple;
  /** Outward from the surface, any length but 0. */
  readonly outward: Triple;
  /** What is to be up there: not along `outward`. */
  readonly up: Triple;
}

const vecOf = ([x, y, z]: Triple): Vec3 => vec3(x, y, z);

/** Outward from a triangle whose corners run counter-clockwise from outside, length 1. @param corners  three numbers of points */
export function outwardOf(positions: ArrayLike<number>, corners: readonly number[]): Triple {
  const [a, b, c] = corners.map((corner) => pointAt3(positions, corner));
  const { x, y, z } = unit3(cross3(add3(b, scale3(a, -1)), add3(c, scale3(a, -1))));
  return [x, y, z];
}

/**
 * A part with the middle of its back on a place, its own z outward and its own y up.
 * @param transform  place of the part in the prop.
 * @param form       its corners as they stand in the prop, packed x y z, mm.
 * @param ground     place of the surface in the prop.
 */
export function setOn(transform: Matrix4, form: ArrayLike<number>, place: SetPlace, ground: Matrix4): Matrix4 {
  const { min, max } = boxOfPoints3(placedPoints4(undone4(transform), form));
  const out = unit3(vecOf(place.outward));
  const right = unit3(cross3(vecOf(place.up), out));
  const up = cross3(out, right);
  const [x, y, z] = place.point;
  const onPlace = [right.x, right.y, right.z, 0, up.x, up.y, up.z, 0, out.x, out.y, out.z, 0, x, y, z, 1];
  const toMiddle = move4(vec3(-(min.x + max.x) / 2, -(min.y + max.y) / 2, -min.z));
  return composed4(composed4(ground, onPlace), toMiddle);
}

/** Sets a part on another where it is to be glued, as one change. */
export const setPartOn = (part: PartId, on: PartId, transform: Matrix4): Command => {
  const seat = addJoin({ kind: 'seat', part, on });
  return { label: seat.label, apply: (project) => seat.apply(changePlain(part, { transform }).apply(project)) };
};
