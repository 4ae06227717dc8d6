import { buildTree, type SurfaceTree } from '../geom/bvh.ts';
import { add3, cross3, dot3, length3, pointAt3, scale3, sub3, unit3, vec3, type Vec3 } from '../geom/vec.ts';
import { triangleNormal } from './measure.ts';
import { nextHalfedge, prevHalfedge, type Topology } from './topology.ts';

/** The place of a surface nearest to a point. */
export interface SignedPlace {
  readonly triangle: number;
  readonly point: Vec3;
  /** Unsigned, mm. */
  readonly distance: number;
  /** 1 on the outer side, -1 on the inner side. */
  readonly side: 1 | -1;
  /** The place lies on an open edge: past it there is no side, and the one told is that of the triangles that end there. */
  readonly isOnRim: boolean;
}

/** A surface of which is known on which side of it a point lies. */
export interface SignedSurface {
  readonly tree: SurfaceTree;
  /** Null only where the surface has no triangle. */
  nearest(point: Vec3): SignedPlace | null;
}

/** Share of a triangle within which a place counts as on its edge or corner: far over the rounding of the nearest place. */
const ON_EDGE = 1e-7;

/**
 * The side is that of the angle-weighted pseudonormal of the face, edge or corner on which the nearest place lies, which is the right one
 * for every closed surface (J. A. Baerentzen and H. Aanaes, "Signed Distance Computation Using the Angle Weighted Pseudonormal", 2005).
 */
export function signedSurface(positions: Float64Array, triangles: Uint32Array, topology: Topology): SignedSurface {
  const tree = buildTree(positions, triangles);
  const corners = cornerNormals(positions, triangles);
  const rims = rimVertices(triangles, topology);
  const normalOf = (t: number): Vec3 => triangleNormal(positions, triangles, t);
  return {
    tree,
    nearest(point) {
      const hit = tree.nearest(point);
      if (hit === null) return null;
      const shares = sharesIn(positions, triangles, hit.triangle, hit.point);
      const [first, second] = [0, 1, 2].filter((k) => shares[k] > ON_EDGE);
      let normal = normalOf(hit.triangle);
      let isOnRim = false;
      if (second === undefined) {
        const v = triangles[3 * hit.triangle + (first ?? 0)];
        normal = pointAt3(corners, v);
        isOnRim = rims[v] === 1;
      } else if (shares.some((share) => share <= ON_EDGE)) {
        // The half-edge between the two corners that have a share.
        const h = 3 * hit.triangle + (first === 0 && second === 2 ? 2 : first);
        const twin = topology.twin[h];
        isOnRim = twin < 0;
        if (twin >= 0) normal = add3(normal, normalOf(Math.floor(twin / 3)));
      }
      const side = dot3(sub3(point, hit.point), normal) < 0 ? -1 : 1;
      return { triangle: hit.triangle, point: hit.point, distance: hit.distance, side, isOnRim };
    },
  };
}

/** What share each corner of a triangle has in a place on it. */
function sharesIn(positions: Float64Array, triangles: Uint32Array, t: number, p: Vec3): readonly number[] {
  const [a, b, c] = [0, 1, 2].map((k) => pointAt3(positions, triangles[3 * t + k]));
  const normal = cross3(sub3(b, a), sub3(c, a));
  const whole = dot3(normal, normal);
  if (!(whole > 0)) return [1, 0, 0];
  const share = (q: Vec3, r: Vec3): number => dot3(normal, cross3(sub3(q, p), sub3(r, p))) / whole;
  return [share(b, c), share(c, a), share(a, b)];
}

/** Sum of the normals round each vertex, each weighed by its angle there; packed x y z, of any length. */
function cornerNormals(positions: Float64Array, triangles: Uint32Array): Float64Array {
  const sums = new Float64Array(positions.length);
  for (let t = 0; t < triangles.length / 3; t += 1) {
    const normal = triangleNormal(positions, triangles, t);
    for (let k = 0; k < 3; k += 1) {
      const v = triangles[3 * t + k];
      const at = pointAt3(positions, v);
      const one = unit3(sub3(pointAt3(positions, triangles[nextHalfedge(3 * t + k)]), at));
      const other = unit3(sub3(pointAt3(positions, triangles[prevHalfedge(3 * t + k)]), at));
      const angle = Math.atan2(length3(cross3(one, other)), dot3(one, other));
      const { x, y, z } = scale3(normal, angle);
      sums[3 * v] += x;
      sums[3 * v + 1] += y;
      sums[3 * v + 2] += z;
    }
  }
  return sums;
}

/** 1 for every vertex at the end of an open edge. */
function rimVertices(triangles: Uint32Array, { twin }: Topology): Uint8Array {
  const rims = new Uint8Array(triangles.reduce((most, v) => Math.max(most, v + 1), 0));
  for (let h = 0; h < twin.length; h += 1) {
    if (twin[h] < 0) rims[triangles[h]] = rims[triangles[nextHalfedge(h)]] = 1;
  }
  return rims;
}

/** Middle of a triangle and how far its farthest corner is from there. */
export function roundTriangle(
  positions: Float64Array,
  triangles: Uint32Array,
  t: number,
): { readonly centre: Vec3; readonly reach: number } {
  const corners = [0, 1, 2].map((k) => pointAt3(positions, triangles[3 * t + k]));
  const centre = scale3(
    corners.reduce((sum, p) => add3(sum, p), vec3(0, 0, 0)),
    1 / 3,
  );
  return { centre, reach: Math.max(...corners.map((p) => length3(sub3(p, centre)))) };
}
