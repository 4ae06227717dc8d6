import type { FoldedSurface } from '../../mesh/principal-curvatures.ts';
import type { ShellLayer } from '../../model/shell-layer.ts';
import type { PatchBend } from './part-bends.ts';

/** A patch on the neutral surface of its foam. Facets move parallel to themselves, so the folds of the sculpt are those of the neutral surface. */
export interface NeutralSurface extends FoldedSurface {
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
}

export function neutralSurface({ surface }: PatchBend, { neutralPositions }: ShellLayer): NeutralSurface {
  const { patch, across, foldRad } = surface;
  const vertexCount = patch.meshVertices.length;
  const positions = new Float64Array(3 * vertexCount);
  patch.meshVertices.forEach((v, i) => {
    positions.set(neutralPositions.subarray(3 * v, 3 * v + 3), 3 * i);
  });
  return { positions, triangles: patch.triangles, vertexCount, across, foldRad };
}
