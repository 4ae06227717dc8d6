import type { MeshPoint } from '../../src/mesh/lines/mesh-line.ts';
import { pointInTriangle, type Weights } from '../../src/mesh/lines/mesh-point.ts';
import type { Surface } from '../../src/mesh/surface.ts';

/** A random place: one in five on a corner, one in five on an edge, the others inside a triangle; triangles equally likely. */
export function randomPoint(surface: Surface, rand: () => number): MeshPoint {
  const kind = rand();
  const t = Math.floor((rand() * surface.triangles.length) / 3);
  const [a, b] = [rand(), rand()];
  const inside: Weights = a + b > 1 ? [1 - a, 1 - b, a + b - 1] : [a, b, 1 - a - b];
  return pointInTriangle(surface, t, kind < 0.2 ? [1, 0, 0] : kind < 0.4 ? [a, 1 - a, 0] : inside);
}
