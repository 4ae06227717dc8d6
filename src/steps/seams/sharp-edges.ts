import { diagonalEdges, edgeFolds } from '../../mesh/edge-fold.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { topologyOf } from '../../mesh/topology.ts';

/**
 * Edges where the surface turns by more than `angleRad` either way, as pairs of mesh vertices.
 * Diagonals that only triangulation made are left out: a maker never sees them.
 * @param angleRad least turn between the outward normals, radians, 0 to pi.
 */
export function sharpEdges(mesh: Mesh, angleRad: number): (readonly [number, number])[] {
  const { edgeVertices } = topologyOf(mesh);
  const folds = edgeFolds(mesh);
  const diagonal = diagonalEdges(mesh);
  const pairs: (readonly [number, number])[] = [];
  for (let e = 0; e < folds.length; e += 1) {
    if (diagonal[e] === 0 && Math.abs(folds[e]) > angleRad) pairs.push([edgeVertices[2 * e], edgeVertices[2 * e + 1]]);
  }
  return pairs;
}
