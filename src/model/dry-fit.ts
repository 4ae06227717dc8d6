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
