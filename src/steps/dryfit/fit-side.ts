import type { FoamPiece, PieceEdge } from '../../model/foam-piece.ts';
import type { Patch } from '../../model/patch.ts';

/** One side of a seam as it is put together: the piece that was cut, and the surface it is bent on. */
export interface FitSide {
  readonly piece: FoamPiece;
  readonly patch: Patch;
  /** Run of the seam on the piece. */
  readonly edge: PieceEdge;
  /** The layer's neutral surface, x y z per mesh vertex, mm. */
  readonly neutralPositions: Float64Array;
  /**
   * For each edge of the seam x y z of its two ends in the seam's direction and of the third corner of the triangle beside it, where the piece's
   * panels end elsewhere than the surface, on hinges or in a corner of many planes; null in a piece that bends as it is.
   */
  readonly hingedEnds: Float64Array | null;
  /** k, the neutral surface's place counted from the back, 0 to 1. */
  readonly neutralFraction: number;
  /**
   * For each edge of the seam how far the smooth surface leans at its middle against the facet beside it, about the seam, radians, positive
   * into the piece; null where the piece is made of its facets.
   */
  readonly tiltRad: Float64Array | null;
  /** For each edge of the seam the panel of the piece beside it: between two of one panel there is no crease. */
  readonly panelBeside: Int32Array;
}

/** How many edges the seam has. */
export const edgeCount = ({ edge }: FitSide): number => edge.stationMm.length - 1;

/** Index in the ring of the point that edge `i` of the seam leaves (`end` 0) or reaches (`end` 1), in the seam's direction. */
export function ringPoint(side: FitSide, i: number, end: 0 | 1): number {
  const { edge, patch } = side;
  const at = edge.reversed ? edgeCount(side) - i - end : i + end;
  return (edge.from + at) % patch.loops[edge.ring].length;
}

/** Local vertex of the patch there. */
export const seamVertex = (side: FitSide, i: number, end: 0 | 1): number =>
  side.patch.loops[side.edge.ring][ringPoint(side, i, end)];

/** The neutral outline's ring the seam runs on. */
export const neutralRing = ({ piece, edge }: FitSide): Float64Array =>
  edge.ring === 0 ? piece.neutralOutline : piece.neutralHoles[edge.ring - 1];
