import type { Mesh } from '../mesh/mesh.ts';
import { hiddenDirection } from '../model/hidden-side.ts';
import type { SeamSet } from '../model/seams.ts';
import type { SculptPart } from '../project/project.ts';
import { edgeWeights } from '../steps/seams/edge-weights.ts';
import { heldEdges, heldTriangles } from '../steps/seams/held-seams.ts';

/** What the maker said of seams, on the mesh: what a search for seams goes by. Arrays per edge go by the edges of its topology. */
export interface SeamWishes {
  /** What a seam costs beside a plain one; Infinity where none may be. */
  readonly weights: Float64Array;
  /** 1 per edge whose seam stays. */
  readonly locked: Uint8Array;
  /** 1 per triangle of a piece that stays as it is. */
  readonly fixedTriangles: Uint8Array;
  /** The edge opposite, itself on the mirror line, or -1; left out where the sculpt has no mirror. */
  readonly mirror?: Int32Array;
}

/**
 * @param seams  as they are now.
 * @param opposite  per edge its partner beyond the mirror, itself on the mirror line, or -1; null where there is no mirror.
 */
export function seamWishesOf(
  mesh: Mesh,
  part: Pick<SculptPart, 'regions' | 'heldSeams' | 'pieceSettings' | 'hiddenSide' | 'upAxis'>,
  seams: SeamSet,
  opposite: Int32Array | null,
): SeamWishes {
  return {
    weights: edgeWeights(mesh, {
      regions: part.regions,
      ...(part.hiddenSide === undefined ? {} : { hidden: hiddenDirection(part.hiddenSide, part.upAxis) }),
      ...(opposite === null ? {} : { mirror: opposite }),
    }),
    locked: heldEdges(mesh, seams, part.heldSeams ?? []),
    fixedTriangles: heldTriangles(mesh, seams, part.pieceSettings),
    ...(opposite === null ? {} : { mirror: opposite }),
  };
}
