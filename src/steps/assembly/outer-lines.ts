import { add3, cross3, dot3, pointAt3, scale3, vec3, type Vec3 } from '../../geom/vec.ts';
import { triangleNormal } from '../../mesh/measure.ts';
import type { Surface } from '../../mesh/surface.ts';
import type { SurfaceTrace } from '../../model/trace.ts';

/** Twice the area a closed line goes round, as seen along the normals of its surface, mm²; positive where the inside is on its left. */
function areaSeen({ positions, triangles }: Surface, { places, triangles: own }: SurfaceTrace): number {
  const count = places.length / 3;
  const from = pointAt3(places, 0);
  let area = vec3(0, 0, 0);
  let normal = vec3(0, 0, 0);
  const less = (p: Vec3): Vec3 => ({ x: p.x - from.x, y: p.y - from.y, z: p.z - from.z });
  for (let i = 1; i + 1 < count; i += 1)
    area = add3(area, cross3(less(pointAt3(places, i)), less(pointAt3(places, i + 1))));
  for (const t of own) normal = add3(normal, triangleNormal(positions, triangles, t));
  return dot3(area, scale3(normal, 1 / Math.max(1, own.length)));
}

/**
 * True for the inner line of a part that is hollow, as of a tube: what of the surface lies in its wall is outside of that line, and another line goes
 * round it. A hole is cut along the outer one.
 */
export function isWithinOther(surface: Surface, trace: SurfaceTrace, all: readonly SurfaceTrace[]): boolean {
  if (!trace.closed || all.length < 2) return false;
  if (areaSeen(surface, trace) >= 0) return false;
  return all.some((other) => other !== trace && other.closed && areaSeen(surface, other) > 0);
}
