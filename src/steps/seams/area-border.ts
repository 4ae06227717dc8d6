import type { Mesh } from '../../mesh/mesh.ts';
import { topologyOf, triangleOfHalfedge } from '../../mesh/topology.ts';
import type { FileGroup } from '../../model/file-group.ts';

/** Groups of the file that a border can be drawn round: those with faces in the mesh and faces beside them. */
export function fileGroups(mesh: Mesh): readonly FileGroup[] {
  const triangles = new Array<number>(mesh.groupNames.length).fill(0);
  for (const face of mesh.faceOfTriangle) {
    const group = mesh.groupOfFace[face] ?? -1;
    if (group >= 0) triangles[group] += 1;
  }
  return mesh.groupNames
    .map((name, group) => ({ group, name }))
    .filter(({ group }) => triangles[group] > 0 && triangles[group] < mesh.faceOfTriangle.length);
}

/** Polygons of the file in a group, ascending. */
export const facesOfGroup = ({ groupOfFace }: Mesh, group: number): readonly number[] =>
  [...groupOfFace.keys()].filter((face) => groupOfFace[face] === group);

/** Edges of the topology between polygons of the file that are in an area and such that are not. Open edges are no border: nothing lies beyond. */
export function areaBorder(mesh: Mesh, faces: Iterable<number>): readonly number[] {
  const own = new Set(faces);
  const { edgeCount, halfedgeOfEdge, twin } = topologyOf(mesh);
  const isIn = (h: number): boolean => own.has(mesh.faceOfTriangle[triangleOfHalfedge(h)]);
  const border: number[] = [];
  for (let e = 0; e < edgeCount; e += 1) {
    const h = halfedgeOfEdge[e];
    if (twin[h] >= 0 && isIn(h) !== isIn(twin[h])) border.push(e);
  }
  return border;
}
