import { add3, cross3, dot3, length3, scale3, sub3, unit3, vec3, type Vec3 } from '../../geom/vec.ts';
import type { ShapeFaces } from '../../model/shape.ts';

/** An edge of a closed polyhedron: the faces on either side, the one that runs from `a` to `b` first. */
export interface SolidEdge {
  readonly a: number;
  readonly b: number;
  readonly faces: readonly [number, number];
  readonly length: number;
  /** Angle between the faces inside, radians; pi where they lie in one plane. */
  readonly dihedral: number;
}

export interface Polyhedron extends ShapeFaces {
  readonly edges: readonly SolidEdge[];
  readonly normals: readonly Vec3[];
  readonly areas: readonly number[];
}

/** Area times normal of a polygon in space (M. Newell), mm². */
function areaVector(corners: readonly Vec3[], face: readonly number[]): Vec3 {
  const first = corners[face[0]];
  let sum = vec3(0, 0, 0);
  for (let i = 1; i + 1 < face.length; i += 1)
    sum = add3(sum, cross3(sub3(corners[face[i]], first), sub3(corners[face[i + 1]], first)));
  return scale3(sum, 0.5);
}

/** Edges, angles and areas of polygons that are flat and closed, or open: an edge with one face has no dihedral and is left out. */
export function polyhedron({ corners, faces }: ShapeFaces): Polyhedron {
  const vectors = faces.map((face) => areaVector(corners, face));
  const normals = vectors.map(unit3);
  const sides = new Map<string, { readonly face: number; readonly a: number; readonly b: number }>();
  const edges: SolidEdge[] = [];
  faces.forEach((face, f) => {
    face.forEach((a, i) => {
      const b = face[(i + 1) % face.length];
      const other = sides.get(`${b} ${a}`);
      if (other === undefined) {
        sides.set(`${a} ${b}`, { face: f, a, b });
        return;
      }
      const along = unit3(sub3(corners[other.b], corners[other.a]));
      const [n, m] = [normals[other.face], normals[f]];
      const turn = Math.atan2(dot3(cross3(n, m), along), dot3(n, m));
      edges.push({
        a: other.a,
        b: other.b,
        faces: [other.face, f],
        length: length3(sub3(corners[b], corners[a])),
        dihedral: Math.PI - turn,
      });
    });
  });
  return { corners, faces, edges, normals, areas: vectors.map(length3) };
}

export const surfaceArea = ({ areas }: Polyhedron): number => areas.reduce((sum, one) => sum + one, 0);

/** Volume of a closed polyhedron, mm³. */
export const volumeOf = ({ corners, faces }: ShapeFaces): number =>
  faces.reduce((sum, face) => sum + dot3(corners[face[0]], areaVector(corners, face)) / 3, 0);

/** What is missing to a whole turn round a corner, radians. */
export function angleDefect({ corners, faces }: ShapeFaces, corner: number): number {
  let sum = 0;
  for (const face of faces) {
    const i = face.indexOf(corner);
    if (i < 0) continue;
    const [p, q] = [face[(i + 1) % face.length], face[(i + face.length - 1) % face.length]].map((v) =>
      sub3(corners[v], corners[corner]),
    );
    sum += Math.atan2(length3(cross3(p, q)), dot3(p, q));
  }
  return 2 * Math.PI - sum;
}
