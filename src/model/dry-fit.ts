import type { PieceId, SeamId } from '../base/ids.ts';

/**
 * How the finished pieces meet when they are bent and put together again. Lengths mm. A gap is air between two edges, an overlap foam that
 * must be squeezed or cut away: how much the two edges together are too short or too long, in the pieces' own surfaces, at the face and at
 * the back of the foam. Both are >= 0.
 */
export interface DryFit {
  readonly worstGapMm: number;
  readonly worstOverlapMm: number;
  /** In the order of the seams; open edges meet nothing and are left out. */
  readonly perSeam: readonly SeamFit[];
  /** Pieces that meet at a corner only and run into each other there, the deepest first; not counted in the figures above. */
  readonly corners: readonly CornerFit[];
}

/** Two corners of pieces that meet at one place without a seam between them. */
export interface CornerFit {
  /** The same one twice where a piece meets itself. */
  readonly pieces: readonly [PieceId, PieceId];
  readonly names: readonly [string, string];
  /** Of the sculpt. */
  readonly vertex: number;
  /** How deep foam runs into foam, to its nearest surface, mm, > 0. */
  readonly overlapMm: number;
  /** The corner of the first piece on its face, model space. */
  readonly at: readonly [number, number, number];
}

export interface SeamFit {
  readonly seam: SeamId;
  readonly letter: string;
  /** The pieces of side 0 and side 1; the same one twice where a piece meets itself. */
  readonly pieces: readonly [PieceId, PieceId];
  readonly worstGapMm: number;
  readonly worstOverlapMm: number;
  /** Greatest distance along the seam between two points that belong together. */
  readonly worstSlipMm: number;
  /** Greatest distance out of the surface between them. */
  readonly worstStepMm: number;
  /** Length of the seam along which nothing is left of one side on the face or on the back, because its bevels took all of it. */
  readonly goneMm: number;
  /** Where gap or overlap is worst: a point on the seam's neutral line, model space. */
  readonly at: readonly [number, number, number];
  readonly samples: FitSamples;
}

/** Figures along a seam, in its direction: one of each for every sample. */
export interface FitSamples {
  /** Length along the seam on the neutral surface, from its start. */
  readonly stationMm: Float64Array;
  /** x y z on the neutral line, model space. */
  readonly points: Float64Array;
  /** Across the seam: gap > 0, overlap < 0. */
  readonly faceGapMm: Float64Array;
  readonly backGapMm: Float64Array;
}
