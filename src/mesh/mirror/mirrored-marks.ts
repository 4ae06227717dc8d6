import type { Mesh } from '../mesh.ts';
import { topologyOf } from '../topology.ts';
import type { Partners } from './mirror-partners.ts';

/** An edge by the numbers of its corners in the file. */
type EdgePair = readonly [number, number];

/**
 * The edges that lie opposite to those given, in numbers of the file: marks on one side appear on the other.
 * @param pairs any pairs; what is no edge, or has no edge opposite, has no partner.
 * @returns one for each that has a partner, which may be itself where it lies in the plane; in the order of `pairs`.
 */
export function mirroredEdges(mesh: Mesh, { ofEdge }: Partners, pairs: readonly EdgePair[]): readonly EdgePair[] {
  const topology = topologyOf(mesh);
  return pairs.flatMap(([a, b]) => {
    const [v, w] = [mesh.vertexOfFile[a] ?? -1, mesh.vertexOfFile[b] ?? -1];
    const edge = v < 0 || w < 0 ? -1 : topology.edgeBetween(v, w);
    const opposite = edge < 0 ? -1 : ofEdge[edge];
    if (opposite < 0) return [];
    const [p, q] = topology.edgeVertices.subarray(2 * opposite, 2 * opposite + 2);
    return [[mesh.fileVertex[p], mesh.fileVertex[q]] as const];
  });
}

/** The edges given and those that lie opposite, each once: what a command that marks takes where the mirror is on. */
export function withMirrored(mesh: Mesh, partners: Partners, pairs: readonly EdgePair[]): readonly EdgePair[] {
  const seen = new Set<string>();
  return [...pairs, ...mirroredEdges(mesh, partners, pairs)].filter(([a, b]) => {
    const key = `${Math.min(a, b)} ${Math.max(a, b)}`;
    return !seen.has(key) && seen.add(key);
  });
}

/** Polygons of the file that lie opposite to those given: all whose triangles are partners of theirs, ascending. Those given may be among them. */
export function mirroredFaces(
  { faceOfTriangle }: Mesh,
  { ofTriangle }: Partners,
  faces: readonly number[],
): readonly number[] {
  const own = new Set(faces);
  const opposite = new Set<number>();
  faceOfTriangle.forEach((face, t) => {
    if (own.has(face) && ofTriangle[t] >= 0) opposite.add(faceOfTriangle[ofTriangle[t]]);
  });
  return [...opposite].sort((a, b) => a - b);
}
