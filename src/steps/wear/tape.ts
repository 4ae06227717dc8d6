import { convexHull, tightBox } from '../../geom/convex-hull.ts';
import { ringArea, ringLength } from '../../geom/ring.ts';
import { cross3, dot3, length3, pointAt3, scale3, sub3, unit3, type Vec3 } from '../../geom/vec.ts';
import type { TapeMeasure } from '../../model/girth.ts';
import type { Plane, Surface } from '../../mesh/surface.ts';
import { planeSection, type SectionLoop } from './plane-section.ts';

/**
 * Lays a tape round a surface in a plane. Of several loops it takes one whose hull holds the plane's point, else any; of those the one
 * that comes nearest to the point. A rim that lies in the plane is measured from whichever side the wall is on.
 * @returns null where the plane misses the surface.
 */
export function measureTape(surface: Surface, plane: Plane): TapeMeasure | null {
  return tapeIn(surface, plane) ?? tapeIn(surface, { point: plane.point, normal: scale3(plane.normal, -1) });
}

function tapeIn(surface: Surface, plane: Plane): TapeMeasure | null {
  const frame = frameOf(plane);
  const loops = planeSection(surface, plane).filter(({ points }) => points.length >= 9);
  let best: { loop: SectionLoop; hull: Float64Array; isRound: boolean; distance: number } | null = null;
  for (const loop of loops) {
    const flat = inFrame(loop.points, frame);
    const hull = convexHull(flat);
    if (!(hull.length >= 6 && ringArea(hull) > 0)) continue;
    const isRound = holdsOrigin(hull);
    const distance = distanceFromOrigin(flat);
    if (best === null || (isRound !== best.isRound ? isRound : distance < best.distance))
      best = { loop, hull, isRound, distance };
  }
  return best === null ? null : measured(best.loop, best.hull, frame);
}

/** Two directions in a plane, square to each other, and its point. */
interface Frame {
  readonly origin: Vec3;
  readonly u: Vec3;
  readonly v: Vec3;
}

export function frameOf({ point, normal }: Plane): Frame {
  const n = unit3(normal);
  const [x, y, z] = [Math.abs(n.x), Math.abs(n.y), Math.abs(n.z)];
  const least = x <= y && x <= z ? { x: 1, y: 0, z: 0 } : y <= z ? { x: 0, y: 1, z: 0 } : { x: 0, y: 0, z: 1 };
  const u = unit3(cross3(least, n));
  return { origin: point, u, v: cross3(n, u) };
}

/** Points as they are seen in a frame, packed x y. */
export function inFrame(points: ArrayLike<number>, { origin, u, v }: Frame): Float64Array {
  const flat = new Float64Array((2 * points.length) / 3);
  for (let i = 0; i < points.length / 3; i += 1) {
    const d = sub3(pointAt3(points, i), origin);
    flat[2 * i] = dot3(d, u);
    flat[2 * i + 1] = dot3(d, v);
  }
  return flat;
}

function measured({ points, bridges }: SectionLoop, hull: Float64Array, { origin, u, v }: Frame): TapeMeasure {
  const box = tightBox(hull);
  const count = points.length / 3;
  let pathMm = 0;
  for (let i = 0; i < count; i += 1) {
    pathMm += sideLength(points, i);
  }
  const extent = [0, 1, 2].map((axis) => {
    const along = Array.from({ length: count }, (_, i) => points[3 * i + axis]);
    return Math.max(...along) - Math.min(...along);
  });
  const corners = new Float64Array((3 * hull.length) / 2);
  for (let i = 0; i < hull.length / 2; i += 1) {
    const [a, b] = [hull[2 * i], hull[2 * i + 1]];
    corners.set([origin.x + a * u.x + b * v.x, origin.y + a * u.y + b * v.y, origin.z + a * u.z + b * v.z], 3 * i);
  }
  return {
    girthMm: ringLength(hull),
    pathMm,
    breadthMm: box.shortMm,
    lengthMm: box.longMm,
    extentMm: [extent[0], extent[1], extent[2]],
    bridges: bridges.map(({ after, rimVertex }) => ({ rimVertex, mm: sideLength(points, after) })),
    hull: corners,
  };
}

/** Length of a closed line from a corner to the next, mm. */
function sideLength(points: Float64Array, i: number): number {
  const next = (i + 1) % (points.length / 3);
  return length3(sub3(pointAt3(points, next), pointAt3(points, i)));
}

/** Whether a counter-clockwise hull has the origin inside or on its border. */
function holdsOrigin(hull: Float64Array): boolean {
  for (let i = 0; i < hull.length; i += 2) {
    const j = (i + 2) % hull.length;
    if (hull[i] * hull[j + 1] - hull[i + 1] * hull[j] < 0) return false;
  }
  return true;
}

/** Least distance of a closed line from the origin. */
function distanceFromOrigin(flat: Float64Array): number {
  let least = Infinity;
  for (let i = 0; i < flat.length; i += 2) {
    const j = (i + 2) % flat.length;
    const [ax, ay] = [flat[i], flat[i + 1]];
    const [dx, dy] = [flat[j] - ax, flat[j + 1] - ay];
    const square = dx * dx + dy * dy;
    const share = square > 0 ? Math.min(1, Math.max(0, -(ax * dx + ay * dy) / square)) : 0;
    least = Math.min(least, Math.hypot(ax + share * dx, ay + share * dy));
  }
  return least;
}
