import type { Heading } from '../../mesh/lines/heading.ts';
import { flatCorners } from '../../mesh/lines/heading.ts';
import { pointInTriangle, trianglesAt, weightsIn, type Weights } from '../../mesh/lines/mesh-point.ts';
import type { MeshLine, MeshPoint } from '../../mesh/lines/mesh-line.ts';
import { plainMesh } from '../../mesh/plain-mesh.ts';
import { surfaceOf, type Surface } from '../../mesh/surface.ts';

/** Triangles of a surface laid in the plane z = 0 by the same weights, the place of a drawing at its origin and the drawing's x along its own. */
export interface Chart {
  readonly flat: Surface;
  readonly start: MeshPoint;
  readonly onSurface: (line: MeshLine) => MeshLine;
}

/** Where triangles lie flat. */
export interface FlatTriangles {
  /** Triangles of the surface. */
  readonly own: ArrayLike<number>;
  /** Three numbers each, of `uv`, in the order in which the surface's triangle has its corners. */
  readonly corners: Uint32Array;
  /** x y, mm. */
  readonly uv: Float64Array;
}

/** @returns null where the place lies on none of the triangles. */
export function chartOf(
  surface: Surface,
  { own, corners, uv }: FlatTriangles,
  at: MeshPoint,
  heading: Heading,
): Chart | null {
  const numberOf = new Map(Array.from(own, (t, i) => [t, i]));
  const first = [heading.triangle, ...trianglesAt(surface, at)].find((t) => numberOf.has(t));
  if (first === undefined) return null;
  const i = numberOf.get(first) as number;
  const weights = weightsIn(surface.topology, surface.triangles, at, first);
  if (weights === null) return null;
  const flatAt = (w: Weights): readonly [number, number] => [
    w.reduce((sum, one, k) => sum + one * uv[2 * corners[3 * i + k]], 0),
    w.reduce((sum, one, k) => sum + one * uv[2 * corners[3 * i + k] + 1], 0),
  ];
  const [x0, y0] = flatAt(weights);
  // The heading by what it does to the weights.
  const slope = first === heading.triangle ? slopeOf(surface, heading) : null;
  const [dx, dy] = slope === null ? [1, 0] : flatAt(slope);
  const size = Math.hypot(dx, dy);
  const [c, s] = size > 0 ? [dx / size, dy / size] : [1, 0];
  const positions = new Float64Array((3 * uv.length) / 2);
  for (let v = 0; v < uv.length / 2; v += 1) {
    const [x, y] = [uv[2 * v] - x0, uv[2 * v + 1] - y0];
    // What no triangle uses may be nowhere.
    positions[3 * v] = Number.isNaN(x) ? 0 : c * x + s * y;
    positions[3 * v + 1] = Number.isNaN(x) ? 0 : c * y - s * x;
  }
  const flat = surfaceOf(plainMesh(positions, corners));
  return {
    flat,
    start: pointInTriangle(flat, i, weights),
    onSurface: ({ points, closed }) => ({
      closed,
      points: points.map((p) => {
        const t = trianglesAt(flat, p)[0];
        const own3 = weightsIn(flat.topology, flat.triangles, p, t);
        if (own3 === null) throw new Error('wrap-art: a point outside its triangle');
        return pointInTriangle(surface, own[t], own3);
      }),
    }),
  };
}

/** How fast the weights of a triangle's corners change along a heading in it, 1/mm; sum 0. */
function slopeOf(surface: Surface, { triangle, x, y }: Heading): Weights {
  const [, b, c] = flatCorners(surface, triangle);
  const third = y / c.y;
  const second = (x - third * c.x) / b.x;
  return [-second - third, second, third];
}
