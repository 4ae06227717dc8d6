import type { MeshLine } from '../mesh/lines/mesh-line.ts';
import type { PlainWork } from './plain-piece.ts';
import type { SurfacePoint } from './seams.ts';

/** What a strip follows: seams or open edges by their ids, or a line drawn on the sculpt. */
export type TrimAlong =
  | { readonly by: 'seams'; readonly ids: readonly string[] }
  | { readonly by: 'line'; readonly points: readonly SurfacePoint[]; readonly closed: boolean };

/**
 * Section of a strip. `bevelled`: its long edges lean in from the back to the face by `leanDeg` from square. `half-round` and `quarter-round`: bought so,
 * or cut from sheet and sanded. `edge-roll`: wrapped round a rim of `rimMm` over a cord of inside radius `radiusMm`, which is at least half the rim, with
 * `lapMm` on each face. `u-binding`: folded square over the rim, `depthMm` down each face.
 */
export type TrimProfile =
  | { readonly kind: 'flat' }
  | { readonly kind: 'bevelled'; readonly leanDeg: number; readonly sides: 'both' | 'left' | 'right' }
  | { readonly kind: 'half-round'; readonly from: 'bought' | 'cut' }
  | { readonly kind: 'quarter-round'; readonly from: 'bought' | 'cut'; readonly square: 'left' | 'right' }
  | { readonly kind: 'edge-roll'; readonly rimMm: number; readonly radiusMm: number; readonly lapMm: number }
  | { readonly kind: 'u-binding'; readonly rimMm: number; readonly depthMm: number; readonly insideRadiusMm: number };

/** How a strip ends. `mitre`: the turn to its neighbour, degrees, left > 0, of which each takes half. `pointed`: to a point so far beyond. */
export type TrimEnd =
  | { readonly kind: 'square' }
  | { readonly kind: 'mitre'; readonly turnDeg: number }
  | { readonly kind: 'pointed'; readonly lengthMm: number };

/** A strip along a line on the sculpt. All JSON-ready. */
export interface TrimWish {
  readonly along: TrimAlong;
  readonly widthMm: number;
  /** How much of the width lies left of the line: 0.5 over its middle, 0 or 1 beside it. */
  readonly leftShare: number;
  readonly thicknessMm: number;
  /** Place of the surface that keeps its length in the strip, from its back, 0 to 1. */
  readonly neutralFraction: number;
  readonly profile: TrimProfile;
  readonly start: TrimEnd;
  readonly end: TrimEnd;
  /** Of a closed ring: how far its end lies over its start, mm; 0 for butt ends. */
  readonly overlapMm: number;
  /** No strip is longer than this, mm; left out, as long as it comes. */
  readonly mostLengthMm?: number;
  /** The middle of the strip keeps to the line within this, mm. */
  readonly withinMm: number;
  /** Match marks on the strip and beneath it. */
  readonly hasMarks: boolean;
}

/** Wishes of a plain cover strip. */
export const PLAIN_TRIM: Omit<TrimWish, 'along'> = {
  widthMm: 20,
  leftShare: 0.5,
  thicknessMm: 2,
  neutralFraction: 0.5,
  profile: { kind: 'flat' },
  start: { kind: 'square' },
  end: { kind: 'square' },
  overlapMm: 0,
  withinMm: 0.2,
  hasMarks: true,
};

/** A place along a strip, mm along the middle of the strip. */
export interface TrimPlace {
  readonly atMm: number;
  readonly value: number;
}

/** What one strip comes to. */
export interface StripFacts {
  readonly key: string;
  /** The line it follows, by name, and the ways along it between which it lies, mm. */
  readonly line: string;
  readonly fromMm: number;
  readonly toMm: number;
  /** Of its middle, laid flat. */
  readonly lengthMm: number;
  /** The middle strays no farther from the line, mm. */
  readonly offMm: number;
  /** Least radius to which it is cut when flat, mm, Infinity where straight; and how far its ends turn from each other in the plane, radians, left > 0. */
  readonly leastFlatRadiusMm: number;
  readonly flatTurnRad: number;
  /** Least radius to which it is bent over its faces, mm, of its neutral surface. */
  readonly leastBendRadiusMm: number;
  /** Strain of its outer or inner skin there, per cent. */
  readonly skinStrainPercent: number;
  /** Greatest twist, degrees in 100 mm. */
  readonly twistDegPer100Mm: number;
  /** How much longer (or, under 0, shorter) its left and right edges must become, per cent, by place; what Gaussian curvature asks beside the flat shape. */
  readonly leftStretchPercent: readonly TrimPlace[];
  readonly rightStretchPercent: readonly TrimPlace[];
  /** The greatest of them by size. */
  readonly greatestStretchPercent: number;
  /** What is sanded off it to its profile, mm³. */
  readonly sandMm3: number;
}

/** Lines beneath a strip, on the surface it is laid on. */
export interface StripPlacing {
  readonly key: string;
  /** Where its left and right edges come to lie; empty where that is off the surface. */
  readonly left: readonly MeshLine[];
  readonly right: readonly MeshLine[];
  /** Match marks across both edges, one line to a side of the strip. */
  readonly marks: readonly MeshLine[];
}

/** Strips along lines of the sculpt. */
export interface TrimResult {
  readonly work: PlainWork;
  readonly strips: readonly StripFacts[];
  readonly placing: readonly StripPlacing[];
}

/** A line to be covered, in a net of lines that meet at nodes. A closed line that meets no other has one node, twice. */
export interface NetLine {
  readonly from: number;
  readonly to: number;
  readonly lengthMm: number;
  /** False where nobody looks: it stays without a cover. */
  readonly isSeen: boolean;
}

/** End `2 i` is the start of line i, `2 i + 1` its end. */
export interface LineNetWish {
  readonly nodeCount: number;
  readonly lines: readonly NetLine[];
  /** Turn of a strip that comes in over one end and leaves over another of the same node, radians, 0 straight on. */
  readonly turn: (end: number, other: number) => number;
  /** A strip turns by no more than this at a node, radians. */
  readonly mostTurnRad: number;
  /** No strip is longer than this, mm; left out, as long as it comes. */
  readonly mostLengthMm?: number;
}

/** One run of lines under one strip. */
export interface NetTrail {
  /** Lines in order; reversed ones are run from their end to their start. */
  readonly lines: readonly { readonly line: number; readonly isReversed: boolean }[];
  readonly closed: boolean;
  readonly lengthMm: number;
  /** How many strips it is cut into by their greatest length. */
  readonly parts: number;
}

export interface NetCover {
  readonly trails: readonly NetTrail[];
  /** Trails there are at least: half the nodes where an odd number of lines meet, or one, of every part of the net that hangs together. */
  readonly fewestTrails: number;
  /** The same when no strip turns by more than is allowed. */
  readonly fewestWithTurns: number;
  readonly reachedTrails: number;
  /** Strips after long trails are cut. */
  readonly strips: number;
  /** Length of all lines that are seen, once: the least there can be, and what is reached. */
  readonly lengthMm: number;
  /** Turns at nodes, added up, radians. */
  readonly turnRad: number;
}

/** A strap with a buckle or other closure. Lengths mm. */
export interface StrapWish {
  /** Round what it goes about, over the clothes. */
  readonly girthMm: number;
  readonly widthMm: number;
  readonly thicknessMm: number;
  /** How far the free end runs on beyond the buckle at the middle hole. */
  readonly overlapMm: number;
  readonly holes: { readonly count: number; readonly spacingMm: number; readonly diameterMm: number };
  readonly tip: { readonly kind: 'pointed'; readonly lengthMm: number } | { readonly kind: 'rounded' };
  /** The tab round the bar of the buckle: bar diameter, length of the tab behind the bar, slot for the prong. */
  readonly buckle: { readonly barMm: number; readonly tabMm: number; readonly slotWidthMm: number };
  /** Loop that holds the free end down. */
  readonly keeperWidthMm: number;
  readonly isReinforced: boolean;
}
