import type { Mesh } from '../mesh/mesh.ts';
import { topologyOf, triangleOfHalfedge } from '../mesh/topology.ts';
import type { SculptPart } from '../project/project.ts';

type Said = Pick<
  SculptPart,
  'seams' | 'seamSettings' | 'edgeWishes' | 'scores' | 'heldSeams' | 'pieceSettings' | 'regions' | 'worn' | 'scale'
>;

/**
 * The corners that what was said of a sculpt stands on, in numbers of the file, ascending: ends of marked edges, corners of polygons that pieces are named
 * by, borders of areas, picked corners. They stay where the sculpt is made simpler, so that all of it keeps its place.
 */
export function keepsOf(mesh: Mesh, part: Said): readonly number[] {
  const keep = new Set<number>();
  const { seams, seamSettings, edgeWishes, scores = [], heldSeams = [], pieceSettings, regions, worn, scale } = part;
  const edges = [
    ...seams.edges,
    ...heldSeams,
    ...scores.flatMap((score) => score.edges),
    ...seamSettings.map(({ edge }) => edge),
    ...edgeWishes.map(({ edge }) => edge),
  ];
  for (const [a, b] of edges) keep.add(a).add(b);
  for (const { vertex } of worn?.openings ?? []) keep.add(vertex);
  if (scale?.by === 'points') keep.add(scale.from).add(scale.to);
  const faces = new Set([
    ...pieceSettings.map(({ face }) => face),
    ...seamSettings.flatMap(({ lapFace, standFace }) => [lapFace ?? -1, standFace ?? -1]),
    ...seams.paths.flatMap(({ points }) => points.flatMap((point) => ('face' in point ? [point.face] : []))),
  ]);
  for (const { points } of seams.paths) for (const point of points) if ('vertex' in point) keep.add(point.vertex);
  mesh.faceOfTriangle.forEach((face, t) => {
    if (faces.has(face)) for (let h = 3 * t; h < 3 * t + 3; h += 1) keep.add(mesh.fileVertex[mesh.triangles[h]]);
  });
  for (const v of borderVertices(mesh, regions)) keep.add(mesh.fileVertex[v]);
  return [...keep].sort((a, b) => a - b);
}

/** Vertices between areas, between groups of the file, and between them and the rest. */
export function borderVertices(mesh: Mesh, regions: SculptPart['regions']): ReadonlySet<number> {
  const areaOf = new Map<number, number>();
  regions.forEach(({ faces }, i) => {
    for (const face of faces) areaOf.set(face, i);
  });
  const { edgeCount, edgeVertices, halfedgeOfEdge, twin } = topologyOf(mesh);
  const border = new Set<number>();
  const faceAt = (h: number): number => mesh.faceOfTriangle[triangleOfHalfedge(h)];
  for (let e = 0; e < edgeCount; e += 1) {
    const h = halfedgeOfEdge[e];
    if (twin[h] < 0) continue;
    const [left, right] = [faceAt(h), faceAt(twin[h])];
    if (areaOf.get(left) === areaOf.get(right) && mesh.groupOfFace[left] === mesh.groupOfFace[right]) continue;
    border.add(edgeVertices[2 * e]).add(edgeVertices[2 * e + 1]);
  }
  return border;
}
