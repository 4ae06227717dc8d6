import { add3, pointAt3, scale3, type Vec3 } from '../../geom/vec.ts';
import { triangleArea } from '../measure.ts';
import type { Mesh } from '../mesh.ts';

/** Places of the surface with the area each speaks for, mm². */
export interface SurfaceSamples {
  readonly points: readonly Vec3[];
  readonly areas: readonly number[];
}

/** Places spread over the surface, each for as much area: the middles of equal parts of it. */
export function samplesOf(mesh: Mesh, count: number): SurfaceSamples {
  const areas: number[] = [];
  for (let t = 0; t < mesh.triangles.length / 3; t += 1) areas.push(triangleArea(mesh.positions, mesh.triangles, t));
  const total = areas.reduce((sum, own) => sum + own, 0);
  const points: Vec3[] = [];
  let before = 0;
  areas.forEach((own, t) => {
    while (points.length < count && (points.length + 0.5) * (total / count) <= before + own) {
      // A place inside of the triangle that differs from one to the next (Weyl's row in two directions).
      let [u, v] = [(points.length * 0.7548776662466927) % 1, (points.length * 0.5698402909980532) % 1];
      if (u + v > 1) [u, v] = [1 - u, 1 - v];
      const [a, b, c] = [0, 1, 2].map((k) => pointAt3(mesh.positions, mesh.triangles[3 * t + k]));
      points.push(add3(scale3(a, 1 - u - v), add3(scale3(b, u), scale3(c, v))));
    }
    before += own;
  });
  return { points, areas: points.map(() => total / count) };
}
