import type { MeshLine } from '../mesh/lines/mesh-line.ts';
import { placeOf, sharedTriangle, weightsIn } from '../mesh/lines/mesh-point.ts';
import type { Surface } from '../mesh/surface.ts';
import type { SurfaceTrace } from '../model/trace.ts';

/** A line with the triangle of each of its stretches. */
export function traceOf(surface: Surface, { points, closed }: MeshLine): SurfaceTrace {
  const { topology, triangles } = surface;
  const stretches = points.slice(0, closed ? points.length : -1).map((p, i) => {
    const q = points[(i + 1) % points.length];
    const t = sharedTriangle(surface, p, q);
    const [from, to] = [weightsIn(topology, triangles, p, t), weightsIn(topology, triangles, q, t)];
    if (t < 0 || from === null || to === null) throw new Error('line: a stretch outside every triangle');
    return { t, ends: [from, to] as const };
  });
  return {
    closed,
    points,
    places: Float64Array.from(
      points.flatMap((p) => {
        const { x, y, z } = placeOf(surface, p);
        return [x, y, z];
      }),
    ),
    triangles: Uint32Array.from(stretches, ({ t }) => t),
    ends: stretches.map(({ ends }) => ends),
  };
}
