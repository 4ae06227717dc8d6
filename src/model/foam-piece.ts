import type { Finding } from '../base/finding.ts';
import type { FoamId, LayerId, PartId, PieceId, SeamId } from '../base/ids.ts';
import type { Ring } from '../geom/ring.ts';
import type { Move2 } from '../geom/turn-and-move.ts';
import type { Vec2 } from '../geom/vec.ts';
import type { BendStrain } from './bend-check.ts';
import type { HeatShrinkage } from './flatten-settings.ts';
import type { FoamSpot, LeastRatio } from './forming.ts';
import type { FoldGroove } from './grooves.ts';
import type { PieceKerfs } from './kerfs.ts';
import type { SawSettings } from './saw-settings.ts';
import type { SteepJoin } from './steep-join.ts';
import type { LetIn } from './let-in.ts';
import type { PieceOutline, PieceScore } from './score.ts';
import type { SeamKind } from './seams.ts';
import type { PieceTipHole } from './tip-hole.ts';

/**
 * rolled: keeps its length on the neutral surface. grooved: folds cut part way and hinged (foam model 2). kerfed: rolled on what straight cuts across
 * the inside of its one bend leave.
 */
export type BendStyle = 'rolled' | 'grooved' | 'kerfed';
export type TracedSide = 'face' | 'back';

/**
 * What is cut from foam, in the size it has when finished. All flat coordinates are mm, seen from the face side, y up, in the frame of
 * `FlatPiece.uv` turned so that the sculpt's up runs up the page where it has a direction.
 */
export interface FoamPiece {
  readonly id: PieceId;
  /** 1, 2, 3 … printed beside the name. */
  readonly number: number;
  readonly name: string;
  readonly part: PartId;
  readonly layer: LayerId;
  readonly foam: FoamId;
  readonly thicknessMm: number;
  readonly quantity: number;
  readonly bendStyle: BendStyle;
  /** Why that style was chosen, one sentence. */
  readonly bendReason: string;
  readonly tracedSide: TracedSide;
  /** The piece this one mirrors, and which hand it is. */
  readonly twinOf?: PieceId;
  /** How this piece comes to lie on its twin: first its x is turned round, then it is moved. Left out where that is not known. */
  readonly twinMove?: Move2;
  readonly hand?: 'left' | 'right';
  /** Short code that changes when anything printed on the template changes. */
  readonly revision: string;
  /** Index into the patches and flat pieces it was made of. */
  readonly patch: number;
  /** Flat coordinates of every local vertex of the patch in the piece's frame (rigidly moved `FlatPiece.uv`), mm. */
  readonly uv: Float64Array;
  /** The outline on the neutral surface, before any edge is added; one point per local vertex of the patch's loops. */
  readonly neutralOutline: Ring;
  readonly neutralHoles: readonly Ring[];
  /** The line to cut, on the traced side; may have other points than the neutral outline. */
  readonly outline: Ring;
  readonly holes: readonly Ring[];
  /** The other edge of the bevel, on the side that is not traced; same structure. Equal to `outline` where all edges are square. */
  readonly otherOutline: Ring;
  readonly otherHoles: readonly Ring[];
  readonly edges: readonly PieceEdge[];
  readonly folds: readonly PieceFold[];
  readonly marks: readonly MatchMark[];
  /** Cuts across its bend; left out where it is not kerfed. */
  readonly kerfs?: PieceKerfs;
  /** Slits in its face that open when it is warmed; left out where it has none. */
  readonly scores?: readonly PieceScore[];
  /** Where sheets are laid on its face; left out where none is. */
  readonly outlines?: readonly PieceOutline[];
  /** Where strips of trim lie on its face, and artwork that is drawn on it; left out where none does. */
  readonly placings?: readonly PiecePlacing[];
  /** What other parts leave on it: where one goes through or sits, where something is let in; left out where none does. */
  readonly letIns?: readonly LetIn[];
  /** Round holes at the ends of its darts; left out where all end in points. */
  readonly tipHoles?: readonly PieceTipHole[];
  /** Unit vector of the sculpt's up in the flat piece, or null where the piece lies level. */
  readonly up: Vec2 | null;
  /**
   * How the sheet's length is to lie on the piece, radians counter-clockwise from +x: wished, or needed because the foam shrinks more one way
   * than the other. Left out where the piece may lie anyhow.
   */
  readonly grainRad?: number;
  /** What the foam loses when it is warmed: the piece is cut larger by it (`cutScaleOf`); left out where it is cut as it is to be. */
  readonly shrinkage?: HeatShrinkage;
  /** Area inside `outline` less holes, mm². */
  readonly areaMm2: number;
  /** Area of the neutral surface in 3D, mm². */
  readonly surfaceAreaMm2: number;
  /** Where the foam must give most, the worst first, at most five. */
  readonly spots?: readonly FoamSpot[];
  /** What no laying flat of this piece can better. */
  readonly leastRatio?: LeastRatio;
  /** Where it is bent most; left out in a flat piece and in one with grooves or kerfs. */
  readonly bend?: BendStrain;
  /** Which edges one setting of the saw cuts. */
  readonly saw?: SawSettings;
  /** Corners whose tip was cut off so that pieces they share no seam with have room; left out where none was. */
  readonly cornerCuts?: readonly CornerCut[];
  readonly findings: readonly Finding[];
}

/** What of a line on the face lies on one piece: an edge of a strip of trim, a match mark beside it, or a line of artwork. */
export interface PiecePlacing {
  /** Name of the trim or artwork. */
  readonly strip: string;
  readonly what: 'edge' | 'mark' | 'engraving';
  /** In the piece's frame, `x y x y`, mm. Its own points serve: the foam carries them along as it bends. */
  readonly points: Float64Array;
  readonly closed: boolean;
}

/** A tip that was cut off, on face and back, the worse of both; mm. */
export interface CornerCut {
  /** Of the sculpt's mesh. */
  readonly vertex: number;
  /** From the tip to the new line. */
  readonly cutMm: number;
  /** Length of the new line: no hole that is left is wider. */
  readonly wideMm: number;
}

/** The run of one seam (or open edge) along a ring of the neutral outline. */
export interface PieceEdge {
  readonly seam: SeamId;
  readonly letter: string;
  readonly side: 0 | 1;
  /** 0 is the outer ring, then holes in order. */
  readonly ring: number;
  /** First and last point in the ring's own order; `to` may be below `from` where the run passes the ring's start. Equal when it is the whole ring. */
  readonly from: number;
  readonly to: number;
  /** True when the ring's order runs against the order of the chain's vertices. */
  readonly reversed: boolean;
  /** Flat arc length on the neutral line at each point of the run from `from` on, mm, beginning with 0. */
  readonly stationMm: Float64Array;
  /** Bevel at each of those points, degrees from square; positive: the back edge stands inside the face edge. */
  readonly bevelDeg: Float64Array;
  /** Distance outward from the neutral line to the face-side and the back-side edge at each of those points, mm. */
  readonly faceOffsetMm: Float64Array;
  readonly backOffsetMm: Float64Array;
  readonly allowanceMm: number;
}

/** A line inside a piece along which it bends sharply. */
export interface PieceFold {
  readonly from: Vec2;
  readonly to: Vec2;
  /** Signed, convex > 0: the face side is on the outside of the bend. */
  readonly angleDeg: number;
  /** What is cut along it so that it bends; left out in a rolled piece, and where the foam is no thicker than a hinge. */
  readonly groove?: FoldGroove;
}

/** A tick outside the cut line that pairs with its like on the other side of the seam. */
export interface MatchMark {
  readonly seam: SeamId;
  readonly letter: string;
  /** 1, 2, 3 along the chain, or in the order of an earlier seam that this one mirrors; the same number stands on both sides. */
  readonly index: number;
  readonly side: 0 | 1;
  /** Place along this side's neutral edge in the order of the chain, mm. */
  readonly stationMm: number;
  /** On the cut line. */
  readonly at: Vec2;
  /** Outward, length 1. */
  readonly outward: Vec2;
}

/** A seam as it came out in foam: lengths walked against each other (foam model 4). */
export interface FoamSeam {
  readonly id: SeamId;
  readonly letter: string;
  readonly kind: SeamKind;
  readonly layer: LayerId;
  /** One piece for an open edge, the same piece twice for a dart or closing seam. */
  readonly pieces: readonly PieceId[];
  readonly allowanceMm: number;
  /** Side that carries the allowance. */
  readonly lapSide: 0 | 1;
  /** Of a lap: the side that lies on top, seen from the face. */
  readonly topSide?: 0 | 1;
  /** Of a rebate: the side that stands on the other. Left out where the fold does not let it, and both sides are cut as at a butt seam. */
  readonly standSide?: 0 | 1;
  /** How it is built where its fold is beyond the blade, as the maker chose; left out where it is cut as it folds. */
  readonly steep?: SteepJoin;
  /** What stands proud along the seam, on the face and on the back, mm; left out where the surfaces run on. */
  readonly step?: { readonly faceMm: number; readonly backMm: number };
  /** Neutral flat length of each side, and of each cut line, mm. */
  readonly lengthMm: readonly number[];
  readonly tracedLengthMm: readonly number[];
  /** Length of the seam on the prop, on the surface its first piece keeps its length on, mm. */
  readonly trueLengthMm: number;
  /** How much more one side is off its own length on the prop than the other, mm. */
  readonly differenceMm: number;
  /** Greatest difference of the two arc lengths at a common model point, measured from the last match mark or end, mm. */
  readonly worstSlipMm: number;
  /** Greatest difference of the two arc lengths at a common model point, walked from the seam's start, mm. */
  readonly worstMisalignmentMm: number;
  readonly bevelDeg: BevelRange;
  /** The same for each side, where one leans otherwise than the other. */
  readonly sideBevelDeg?: readonly [BevelRange, BevelRange];
}

/** Least and greatest bevel along an edge, degrees from square; positive: the back edge stands inside the face edge. */
export interface BevelRange {
  readonly min: number;
  readonly max: number;
}
