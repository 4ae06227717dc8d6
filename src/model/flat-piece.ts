import type { LeastRatio, WorstSpot } from './forming.ts';

/**
 * A patch laid flat at true scale: millimetres on the table are millimetres of foam at its neutral surface.
 * Seen from the face side, y up, triangles counter-clockwise.
 */
export interface FlatPiece {
  /** x y per local vertex of the patch, mm. */
  readonly uv: Float64Array;
  /** Per triangle the larger singular value of the map from flat piece to finished shape (1 = true length). */
  readonly major: Float64Array;
  /** Per triangle the smaller one. */
  readonly minor: Float64Array;
  /** Direction of `major` in the flat piece, radians from +x, per triangle. */
  readonly majorAngle: Float64Array;
  readonly stretchPct: Spread;
  readonly squashPct: Spread;
  /** Area-weighted mean of the symmetric Dirichlet energy; 4 is an isometry. */
  readonly energy: number;
  readonly flipped: number;
  /** Pairs of triangles (local) that lie on each other although the surface does not: the piece folds over itself. */
  readonly overlaps: readonly (readonly [number, number])[];
  /** How many such pairs there are in all: `overlaps` may list only the first of them. */
  readonly overlapCount?: number;
  readonly solve: SolveReport;
  /** Where the foam must give most, the worst first; left out while the shape is only a first look. */
  readonly spots?: readonly WorstSpot[];
  /** What no laying flat of this patch can better; left out likewise. */
  readonly leastRatio?: LeastRatio;
}

/** Largest value, the smallest value that 99 % of the area does not exceed, and the area-weighted mean; per cent. */
export interface Spread {
  readonly max: number;
  readonly p99: number;
  readonly mean: number;
}

/** How the flat shape was found; the same input gives the same report. */
export interface SolveReport {
  /** `unfolded`: the surface is developable and was rolled out exactly. */
  readonly method: 'unfolded' | 'minimised';
  readonly steps: number;
  /** False when the step limit came first: the piece is valid but could still be a little better. */
  readonly converged: boolean;
}
