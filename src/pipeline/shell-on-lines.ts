import type { CutMesh } from '../mesh/lines/cut-along.ts';
import type { MeshPoint } from '../mesh/lines/mesh-line.ts';
import { placeOf } from '../mesh/lines/mesh-point.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { topologyOf } from '../mesh/topology.ts';
import type { ShellLayer } from '../model/shell-layer.ts';

/**
 * The surfaces of a sheet on the sculpt cut along lines. New vertices move with the triangle or edge they lie on, so that the foam is the
 * same, to the last bit, whether a line is drawn on it or not.
 */
export function shellOnLines(shell: ShellLayer, sculpt: Mesh, { mesh, added }: CutMesh): ShellLayer {
  const onLines = (positions: Float64Array): Float64Array =>
    positions === sculpt.positions ? mesh.positions : withAdded(sculpt, positions, added);
  return {
    ...shell,
    facePositions: onLines(shell.facePositions),
    neutralPositions: onLines(shell.neutralPositions),
    backPositions: onLines(shell.backPositions),
  };
}

/** Three numbers per vertex of the sculpt with those of places on it behind: each is weighed of those round it. */
export function withAdded(sculpt: Mesh, perVertex: Float64Array, added: readonly MeshPoint[]): Float64Array {
  const surface = { positions: perVertex, triangles: sculpt.triangles, topology: topologyOf(sculpt) };
  const all = new Float64Array(perVertex.length + 3 * added.length);
  all.set(perVertex);
  added.forEach((place, i) => {
    const { x, y, z } = placeOf(surface, place);
    all.set([x, y, z], perVertex.length + 3 * i);
  });
  return all;
}
