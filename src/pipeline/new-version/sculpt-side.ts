import { cross3, dot3, length3, pointAt3, scale3, sub3, add3, type Vec3 } from '../../geom/vec.ts';
import type { MeshPoint } from '../../mesh/lines/mesh-line.ts';
import { placeOf, pointAtPlace, trianglesAt } from '../../mesh/lines/mesh-point.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { surfaceOf } from '../../mesh/surface.ts';
import { surfaceTreeOf } from '../../mesh/surface-tree.ts';
import type { SourceModel } from '../../model/source-model.ts';

/** A version of a sculpt: what its file says, and its mesh in mm. */
export interface SculptSide {
  readonly model: SourceModel;
  readonly mesh: Mesh;
}

/** A place in space and the way the surface looks there. */
export interface Spot {
  readonly at: Vec3;
  /** Outward, of length 1; any where the surface is empty there. */
  readonly normal: Vec3;
}

/** Area of a triangle twice over along its normal, mm². */
function areaVector({ positions, triangles }: Mesh, t: number): Vec3 {
  const [a, b, c] = [0, 1, 2].map((k) => pointAt3(positions, triangles[3 * t + k]));
  return cross3(sub3(b, a), sub3(c, a));
}

/** Where a point of the mesh lies, and the mean way its triangles look. */
export function spotOf(mesh: Mesh, p: MeshPoint): Spot {
  const surface = surfaceOf(mesh);
  const sum = trianglesAt(surface, p).reduce((all, t) => add3(all, areaVector(mesh, t)), { x: 0, y: 0, z: 0 });
  const length = length3(sum);
  return { at: placeOf(surface, p), normal: length > 0 ? scale3(sum, 1 / length) : sum };
}

/** The middle of a triangle. */
export const middleOf = (mesh: Mesh, triangle: number): Spot =>
  spotOf(mesh, { at: 'triangle', triangle, bary: [1 / 3, 1 / 3, 1 / 3] });

/**
 * The place of a surface nearest to a spot of another version of it. It looks the same way, so that nothing leaps through a thin wall to the
 * other side.
 * @param mostMm  farther away there is none.
 */
export function nearestPlace(mesh: Mesh, { at, normal }: Spot, mostMm: number): MeshPoint | null {
  const tree = surfaceTreeOf(mesh);
  // From outside first the near side of a wall comes first; from inside that of a hollow.
  for (const outMm of [0, mostMm, -mostMm]) {
    const hit = tree.nearest(add3(at, scale3(normal, outMm)));
    if (hit === null) return null;
    const looks = dot3(areaVector(mesh, hit.triangle), normal);
    if (looks < 0 || length3(sub3(hit.point, at)) > mostMm) continue;
    return pointAtPlace(surfaceOf(mesh), hit.triangle, hit.point);
  }
  return null;
}
