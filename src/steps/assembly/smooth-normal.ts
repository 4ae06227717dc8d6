import { add3, cross3, dot3, length3, pointAt3, scale3, sub3, unit3, vec3, type Vec3 } from '../../geom/vec.ts';
import { cornersOf, type Weights } from '../../mesh/lines/mesh-point.ts';
import { triangleNormal } from '../../mesh/measure.ts';
import type { Surface } from '../../mesh/surface.ts';

/** Faces that lean more than this against each other meet at an edge of the form, radians: 30 degrees [J]. Under it they are facets of one round. */
const EDGE_OF_FORM = Math.PI / 6;

/**
 * The outward normal of the round surface that triangles stand for, at a place in one of them: that of its corners in between, each the mean of the
 * faces round it that belong to the same round, weighed by their angle there.
 */
export function smoothNormal(surface: Surface, t: number, weights: Weights): Vec3 {
  const { positions, triangles } = surface;
  const { starts, corners } = cornersOf(surface);
  const own = triangleNormal(positions, triangles, t);
  let sum = vec3(0, 0, 0);
  for (let k = 0; k < 3; k += 1) {
    if (weights[k] === 0) continue;
    const v = triangles[3 * t + k];
    let atCorner = vec3(0, 0, 0);
    for (let i = starts[v]; i < starts[v + 1]; i += 1) {
      const normal = triangleNormal(positions, triangles, Math.floor(corners[i] / 3));
      if (dot3(normal, own) < Math.cos(EDGE_OF_FORM)) continue;
      atCorner = add3(atCorner, scale3(normal, angleAt(surface, corners[i])));
    }
    sum = add3(sum, scale3(unit3(atCorner), weights[k]));
  }
  return unit3(sum);
}

function angleAt({ positions, triangles }: Surface, corner: number): number {
  const base = corner - (corner % 3);
  const at = pointAt3(positions, triangles[corner]);
  const [p, q] = [1, 2].map((k) => sub3(pointAt3(positions, triangles[base + ((corner + k) % 3)]), at));
  return Math.atan2(length3(cross3(p, q)), dot3(p, q));
}
