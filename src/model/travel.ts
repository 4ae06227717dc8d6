import type { Finding } from '../base/finding.ts';

/** A stretch of the prop along its length, mm from its foot. */
export interface Stretch {
  readonly fromMm: number;
  readonly toMm: number;
}

/** A stretch that no joint may part, and why: `the lamp`. */
export interface WholeStretch extends Stretch {
  readonly name: string;
}

/** What holds two pieces together. */
export type JointKind =
  /** A peg in the end of one piece that goes into the next. `engagementMm` missing: twice its diameter [J]. */
  | { readonly kind: 'peg'; readonly diameterMm: number; readonly engagementMm?: number; readonly isLoose?: boolean }
  /** `pullN`: what one pair holds, as measured or as its seller says, N. `acrossMm`: how wide the joint is. */
  | { readonly kind: 'magnets'; readonly pullN: number; readonly acrossMm: number; readonly safety?: number }
  /** Straps with buckles over the joint. */
  | { readonly kind: 'strap'; readonly count?: number };

export interface TravelWish {
  readonly lengthMm: number;
  /** Longest that goes into the bag, mm. */
  readonly bagMm: number;
  readonly whole?: readonly WholeStretch[];
  readonly joint: JointKind;
  /** Of the whole prop, kg, taken as spread evenly. Needed for magnets. */
  readonly massKg?: number;
  /** Where it is held, mm from the foot. Missing: in the middle. */
  readonly gripMm?: number;
}

export interface TravelJoint {
  /** mm from the foot. */
  readonly atMm: number;
  /** How far a peg goes into each side, mm; 0 where there is none. */
  readonly engagementMm: number;
  /** Pairs of magnets, or straps; 0 for a peg. */
  readonly count: number;
  readonly text: string;
}

export interface TravelPiece extends Stretch {
  /** As it lies in the bag, with the peg that stands out of it, mm. */
  readonly packedMm: number;
}

export interface TravelPlan {
  readonly joints: readonly TravelJoint[];
  readonly pieces: readonly TravelPiece[];
  /** Loose pegs to take along, mm each. */
  readonly pegsMm: readonly number[];
  readonly findings: readonly Finding[];
}
