import type { Finding } from '../base/finding.ts';
import type { PlainWork } from './plain-piece.ts';

/**
 * What is built up on a core. Lengths run along the core from its start to its end, 0 at the cut start; angles round it run counter-clockwise as one
 * sees its end. All mm unless the name says otherwise, and JSON-ready, so that a project keeps a wish as it is.
 */
export interface BuildUpWish {
  readonly core: CoreChoice;
  /** The finished surface: by ascending length, two at one length make a step. Outside of it the core is bare. Empty: nothing is built up. */
  readonly profile: readonly ProfileCorner[];
  /** Foam in hand. */
  readonly sheets: readonly WrapSheet[];
  /** sand: foam stands proud everywhere. fill: it stands proud nowhere. middle: half a sheet at most either way. */
  readonly rule: BuildRule;
  readonly weights: BuildWeights;
  /** How far the seam of a layer is turned from that of the layer under it, degrees, 60 to 300. */
  readonly seamTurnDeg: number;
  /** A thin sheet over all, so that the finished face is one sheet; left out, the layers themselves are sanded to the profile. */
  readonly skin?: SkinWish;
  /** Stretches closed with straight strips of sheet, edges leaning, instead of the topmost layers. */
  readonly staves: readonly StavesWish[];
  readonly windings: readonly WindingWish[];
}

export type BuildRule = 'sand' | 'middle' | 'fill';

/** A pipe or rod. */
export interface CoreChoice {
  /** A name of `shared/pipes.json`; left out where only the diameter is known. */
  readonly pipe?: string;
  readonly diameterMm: number;
  /** What it is made of, where that is known: `pvc`. */
  readonly material?: string;
  /** From end to end of the finished thing, caps and all. */
  readonly overallMm: number;
  readonly startCap?: CapWish;
  readonly endCap?: CapWish;
  /** Between core and what slides on it, on either side. */
  readonly glueRoomMm: number;
  readonly places: readonly CorePlace[];
}

/** What closes an end: discs of sheet glued on it, or a cap that is bought. Both stand off the core's end. */
export type CapWish =
  | { readonly kind: 'discs'; readonly sheetMm: number; readonly count: number; readonly diameterMm?: number }
  | { readonly kind: 'bought'; readonly standsOffMm: number };

/** A part that sits on the core: a head, a ring, a pommel. */
export interface CorePlace {
  readonly name: string;
  readonly fromMm: number;
  readonly toMm: number;
  /** core: the foam leaves room for it. foam: it sits on what is built up. */
  readonly on: 'core' | 'foam';
}

/** A corner of the profile. */
export interface ProfileCorner {
  readonly atMm: number;
  readonly radiusMm: number;
  /** How it goes on from here to the next corner; left out: straight. */
  readonly onward?: 'straight' | 'smooth';
}

/** A sheet in hand. */
export interface WrapSheet {
  readonly thicknessMm: number;
  /** k, 0 to 1. */
  readonly neutralFraction: number;
  /** Where it is known: pieces that are too large are parted. */
  readonly sizeMm?: readonly [number, number];
}

/** What a plan costs: volume is what is taken off or put on by hand. */
export interface BuildWeights {
  /** Of one cm³ sanded and of one cm³ filled. */
  readonly sandCm3: number;
  readonly fillCm3: number;
  /** Of one more wrap, counted in cm³ of sanding. */
  readonly wrap: number;
}

/** A wrap is worth as much work as 10 cm³ of sanding, filling as much as sanding [J]. */
export const USUAL_WEIGHTS: BuildWeights = { sandCm3: 1, fillCm3: 1, wrap: 10 };

/** The golden angle, 360 (2 - golden ratio) degrees: no two of the first eight seams come nearer than 20 degrees, neighbours never. */
export const GOLDEN_TURN_DEG = 137.50776405003785;

export interface SkinWish {
  readonly sheetMm: number;
  /** Smooth stretches are covered by cones that stand off them by no more than this. */
  readonly deviationMm: number;
}

export interface StavesWish {
  readonly fromMm: number;
  readonly toMm: number;
  /** How many, 3 to 60. */
  readonly count: number;
  readonly sheetMm: number;
}

/** A strip wound round the finished surface. */
export interface WindingWish {
  readonly fromMm: number;
  readonly toMm: number;
  readonly widthMm: number;
  /** 0: the surface itself keeps its length. */
  readonly thicknessMm: number;
  readonly neutralFraction: number;
  /** By how much a turn gets on along the core, or how much of it lies on the one before, square to the strip; less than 0: a gap. */
  readonly by: { readonly pitchMm: number } | { readonly overlapMm: number };
  /** What stays alike on a taper: the pitch, the overlap, or the strip itself, which then lies without any strain. */
  readonly keep: 'pitch' | 'overlap' | 'straight';
  /** Strips side by side, 1 to 12. */
  readonly starts: number;
  readonly hand: 'right' | 'left';
  /** straight: as it comes off the roll, pulled sideways on a taper. curved: to its true flat shape. */
  readonly cut: 'straight' | 'curved';
  /** A second strip of the other hand over it. */
  readonly crossed: boolean;
}

/** The core as it is cut. */
export interface CoreCut {
  readonly diameterMm: number;
  readonly cutMm: number;
  /** Marks on it along its length. */
  readonly marks: readonly { readonly name: string; readonly atMm: number }[];
  /** What sits on it, with the hole it needs. */
  readonly seats: readonly (CorePlace & { readonly holeMm: number })[];
}

/** A sheet wound over a stretch as a cylinder. */
export interface BuiltLayer {
  /** From 1, on the core. */
  readonly number: number;
  /** How many layers lie under it, and it: 1 on the core. */
  readonly depth: number;
  readonly fromMm: number;
  readonly toMm: number;
  readonly insideRadiusMm: number;
  readonly thicknessMm: number;
  readonly neutralFraction: number;
  /** Round the surface that keeps its length: pi (D + 2 k t). */
  readonly aroundMm: number;
  /** Where its seams stand, degrees. */
  readonly seamsDeg: readonly number[];
  readonly sandMm3: number;
  readonly fillMm3: number;
  /** Blade lean of the seam's edges, degrees; 0: square. */
  readonly seamBevelDeg: number;
}

/** A part of the skin, by what it is on the face. */
export interface SkinBand {
  readonly fromMm: number;
  readonly toMm: number;
  readonly fromRadiusMm: number;
  readonly toRadiusMm: number;
  readonly thicknessMm: number;
  readonly seamDeg: number;
  /** Of its neutral surface laid flat: radii of both arcs and the angle between, 0 radii where it is a rectangle. */
  readonly sector: { readonly outerMm: number; readonly innerMm: number; readonly angleDeg: number };
}

/** Staves of one stretch, with the settings of the saw. */
export interface StaveSet extends StaveAngles {
  readonly fromMm: number;
  readonly toMm: number;
  readonly count: number;
  readonly thicknessMm: number;
  /** Widths of the face at both ends, and its length. */
  readonly widthMm: readonly [number, number];
  readonly lengthMm: number;
  readonly sandMm3: number;
  readonly fillMm3: number;
}

/** Compound angles of staves: what the table leans for the long edges, and by how much an edge runs from the stave's middle line. */
export interface StaveAngles {
  readonly tableTiltDeg: number;
  readonly taperDeg: number;
  /** Between the face and the axis. */
  readonly slopeDeg: number;
}

/** What tapers, and how it could be sawn instead of sanded: by the number of staves. */
export interface TaperFigures {
  readonly fromMm: number;
  readonly toMm: number;
  readonly slopeDeg: number;
  readonly staves: readonly (StaveAngles & { readonly count: number })[];
  /** What layers leave to sand or fill on it. */
  readonly sandMm3: number;
  readonly fillMm3: number;
}

/** A strip as it is wound. */
export interface Winding {
  readonly fromMm: number;
  readonly toMm: number;
  readonly starts: number;
  readonly leadDeg: readonly [number, number];
  /** Along the core, least and greatest. */
  readonly pitchMm: readonly [number, number];
  /** Square to the strip, least and greatest; less than 0: a gap. */
  readonly overlapMm: readonly [number, number];
  readonly turns: number;
  /** Along the middle of one strip from end to end of the stretch, and with both slanting ends. */
  readonly stripMm: number;
  readonly cutMm: number;
  /** Of the end cuts from the strip's length, degrees. */
  readonly endCutDeg: readonly [number, number];
  /** By how much a straight strip's edges must give, per cent; 0 where it lies as it is. */
  readonly edgeStretchPct: number;
  /** Least radius of the strip laid flat; null where it is straight. */
  readonly leastFlatRadiusMm: number | null;
  /** Where each strip crosses the line along the core that it starts on. */
  readonly crossings: readonly { readonly strip: number; readonly atMm: readonly number[] }[];
}

/** A line of the side view: x along the core, y outward. */
export interface SideLine {
  readonly role: 'core' | 'layer' | 'skin' | 'stave' | 'cap' | 'seat' | 'profile' | 'winding';
  readonly points: readonly (readonly [number, number])[];
  readonly closed: boolean;
  /** What stands beside it. */
  readonly text?: string;
}

/** A core with all that is built up on it. */
export interface BuildUp {
  readonly core: CoreCut;
  readonly rule: BuildRule;
  readonly layers: readonly BuiltLayer[];
  readonly skin: readonly SkinBand[];
  readonly staves: readonly StaveSet[];
  readonly tapers: readonly TaperFigures[];
  readonly windings: readonly Winding[];
  readonly sandMm3: number;
  readonly fillMm3: number;
  /** Greatest height of foam over the surface it is sanded to, and of that surface over the foam, square to the axis. */
  readonly sandDepthMm: number;
  readonly fillDepthMm: number;
  /** What the plan costs by the weights: no other choice of sheets costs less. */
  readonly cost: number;
  /** Of the finished surface between the ends of the profile, and of the core within it. */
  readonly solidMm3: number;
  readonly coreMm3: number;
  readonly sideView: readonly SideLine[];
  readonly findings: readonly Finding[];
  readonly work: PlainWork;
}
