import { fail, ok, type Result } from '../../base/result.ts';
import { edgeDistances, pathTo } from '../../mesh/edge-distance.ts';
import { diagonalEdges, edgeLengths } from '../../mesh/edge-fold.ts';
import type { Mesh } from '../../mesh/mesh.ts';

/**
 * The shortest way along the sculpt's edges from one corner to another, as mesh vertices, both ends included.
 * Diagonals inside a polygon of the file are taken only where no way without them exists.
 * Fails with `seams/no-path` when the two lie on surfaces that do not touch.
 */
export function edgePath(mesh: Mesh, from: number, to: number): Result<readonly number[]> {
  const lengths = edgeLengths(mesh);
  const diagonal = diagonalEdges(mesh);
  const visible = lengths.map((length, e) => (diagonal[e] === 1 ? Infinity : length));
  const search = (weights: Float64Array): number[] => pathTo(mesh, edgeDistances(mesh, [from], weights, to), to);
  const along = search(visible);
  const path = along.length > 0 ? along : search(lengths);
  if (path.length === 0) {
    return fail('seams/no-path', 'No edges lead from one point to the other: they lie on separate surfaces.', {
      vertices: [from, to],
    });
  }
  return ok(path);
}
