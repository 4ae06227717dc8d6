import type { Stepwise } from '../../base/stepwise.ts';
import { add3, dot3, pointAt3, scale3, sub3, unit3, vec3, type Vec3 } from '../../geom/vec.ts';
import { boxOfPoints3 } from '../../mesh/measure.ts';
import type { Surface } from '../../mesh/surface.ts';
import { planeSection } from './plane-section.ts';
import type { Rod } from './rod-clearance.ts';
import { frameOf } from './tape.ts';

/** Corners of a rod's end. */
const ROUND = 48;
/** A rod without ends is drawn so far beyond the foam on either side, in its radii. */
const BEYOND = 1;
/** Planes across a core of any form, along each axis. */
const CUTS = 5;

/** Closed lines, packed x y z without a repeated last point, mm. */
export type CoreOutline = readonly Float64Array[];

/** How a rod stands: a ring at either end and four lines along it. A rod without ends reaches a little past the foam. */
export function rodOutline(back: Float64Array, rod: Rod): CoreOutline {
  const axis = unit3(rod.direction);
  const { u, v } = frameOf({ point: rod.point, normal: axis });
  let [from, to] = [-rod.lengthMm / 2, rod.lengthMm / 2];
  if (!Number.isFinite(rod.lengthMm)) {
    [from, to] = [Infinity, -Infinity];
    for (let i = 0; i < back.length / 3; i += 1) {
      const along = dot3(sub3(pointAt3(back, i), rod.point), axis);
      [from, to] = [Math.min(from, along), Math.max(to, along)];
    }
    if (from > to) return [];
    [from, to] = [from - BEYOND * rod.radiusMm, to + BEYOND * rod.radiusMm];
  }
  const at = (along: number, turn: number): Vec3 => {
    const side = add3(scale3(u, Math.cos(turn)), scale3(v, Math.sin(turn)));
    return add3(rod.point, add3(scale3(axis, along), scale3(side, rod.radiusMm)));
  };
  const ring = (along: number): Float64Array =>
    packed(Array.from({ length: ROUND }, (_, i) => at(along, (2 * Math.PI * i) / ROUND)));
  const lengthways = (turn: number): Float64Array =>
    packed([at(from, turn), at(to, turn), at(to, turn + Math.PI), at(from, turn + Math.PI)]);
  return [ring(from), ring(to), lengthways(0), lengthways(Math.PI / 2)];
}

/** How a core of any form stands: where planes square to the three axes cut it, at even distances. */
export function* modelOutlineSteps(core: Surface): Stepwise<CoreOutline> {
  const { min, max } = boxOfPoints3(core.positions);
  const lines: Float64Array[] = [];
  for (const [i, axis] of (['x', 'y', 'z'] as const).entries()) {
    const normal = vec3(i === 0 ? 1 : 0, i === 1 ? 1 : 0, i === 2 ? 1 : 0);
    for (let cut = 0; cut < CUTS; cut += 1) {
      const along = min[axis] + ((cut + 0.5) / CUTS) * (max[axis] - min[axis]);
      lines.push(...planeSection(core, { point: scale3(normal, along), normal }).map(({ points }) => points));
      yield;
    }
  }
  return lines;
}

const packed = (points: readonly Vec3[]): Float64Array => Float64Array.from(points.flatMap(({ x, y, z }) => [x, y, z]));
