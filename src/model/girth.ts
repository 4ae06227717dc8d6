import type { Vec3 } from '../geom/vec.ts';

/** x y z. */
export type Triple = readonly [number, number, number];

/**
 * A tape laid round the inside of a part, as the maker put it there, with what the body measures at that place. The place is kept in the
 * numbers of the model file, so that it stays on the sculpt when the size changes; what is measured on the body is in mm.
 */
export interface GirthTape {
  readonly id: string;
  readonly name: string;
  /** A point of the tape's plane, in the numbers of the file: of several loops in the plane, the one round or nearest to it is meant. */
  readonly pointInFile: Triple;
  /** Square to the plane; any length but 0. */
  readonly normal: Triple;
  /** Girth of the body there, mm, > 0. */
  readonly bodyGirthMm?: number;
  /** How much looser than the body the girth is to be, mm, >= 0. Missing: 0. */
  readonly easeMm?: number;
  /** Lesser and greater width of the body there, mm, > 0: a girth alone lets a head in that is too long. */
  readonly bodyBreadthMm?: number;
  readonly bodyLengthMm?: number;
}

/** What an opening is for. */
export type OpeningUse = 'way-in' | 'sight' | 'air';

/** What must pass an opening when the part is put on, mm, > 0: for a helm the head, for a bracer the fist. */
export interface PassChoice {
  readonly girthMm?: number;
  readonly breadthMm?: number;
  /** The tape at the place where it is worn; missing: the first. */
  readonly tape?: string;
  /** True of what is worn over the face: it must have openings for sight and air. */
  readonly coversFace?: boolean;
  /** What openings are for, each by a vertex of the file on its rim. */
  readonly openings?: readonly { readonly vertex: number; readonly use: OpeningUse }[];
}

/** One surface measured at a plane. A tape bridges hollows, so its length is that of the convex hull. */
export interface TapeMeasure {
  /** Length of the tape, mm. */
  readonly girthMm: number;
  /** Length of the section itself, openings bridged, mm: greater than the girth where the section has hollows. */
  readonly pathMm: number;
  /** Sides of the rectangle of least area round the section, mm: breadth <= length. */
  readonly breadthMm: number;
  readonly lengthMm: number;
  /** Extent of the section along each axis of the model, mm. */
  readonly extentMm: Triple;
  /** Where the section crosses openings of the part: a vertex of each one's rim, and how far it is across, mm. */
  readonly bridges: readonly { readonly rimVertex: number; readonly mm: number }[];
  /** The tape itself, x y z per corner of the hull, mm, closed without a repeated last point. */
  readonly hull: Float64Array;
}

/** Both surfaces of the foam measured at one tape. Null where the plane misses the surface. */
export type TapeMeasures = Pick<TapeFit, 'back' | 'face'>;

/** A tape and what it comes to. Null where the plane misses the surface. */
export interface TapeFit {
  readonly tape: GirthTape;
  readonly back: TapeMeasure | null;
  readonly face: TapeMeasure | null;
  /** Mean room between body and foam, mm: (girth - body's girth) / 2 pi; negative: too tight. Null without a body's girth. */
  readonly clearanceMm: number | null;
  /** Girth that is missing to body and ease together, mm; 0 where it fits. */
  readonly missingMm: number;
  /** Size on the real shell, as a multiple of the present one, at which the girth is that of the body and the ease; null: none found. */
  readonly sizeFactor: number | null;
  /** How far all of the foam must be moved outward for that, mm, inward negative; null: none found. */
  readonly moveMm: number | null;
  /** Thickness of padding inside that takes up what the girth has to spare, mm; null where it has none or none was found. */
  readonly paddingMm: number | null;
}

/** An open rim of the back surface, mm. */
export interface Opening {
  /** Vertices of the mesh along the rim. */
  readonly vertices: Uint32Array;
  readonly centre: Vec3;
  /** Mean direction square to the rim, length 1. */
  readonly normal: Vec3;
  /** Seen along its normal: length of the tape across it, least width between two parallel lines, and area inside, mm and mm². */
  readonly girthMm: number;
  readonly breadthMm: number;
  readonly areaMm2: number;
  /** How far it goes level and upright as the part stands, seen along its normal, mm. */
  readonly acrossMm: number;
  readonly uprightMm: number;
  /** What the maker said it is for; null: nothing. */
  readonly use: OpeningUse | null;
  /**
   * Least girth of the sections between the opening and the place where the part is worn, and where, mm; null without such a place, and
   * where what must pass does not pass the opening itself.
   */
  readonly narrowest: { readonly girthMm: number; readonly breadthMm: number; readonly point: Vec3 } | null;
  /**
   * How wide this same opening is at the place worn, mm. Of the way in, over 0 means that it runs up the side as a slit, so that the part
   * can be spread there; of a window it is its own width.
   */
  readonly slitMm: number;
  /** Whether what must pass does pass here, on the whole way; null when nothing was said to pass. */
  readonly passes: boolean | null;
}

/** Seams along which a part opens. */
export interface OpeningSeams {
  /** Indices into the chains of the cut, in the order they run from rim to rim. */
  readonly chains: readonly number[];
  /** Their letters, as printed on the pieces. */
  readonly letters: readonly string[];
  readonly lengthMm: number;
  /** `side`: from one opening to another, so that the part opens like a book. `halves`: across one opening, so that it comes apart. */
  readonly kind: 'side' | 'halves';
}

/** How a part goes on. */
export interface PuttingOn {
  /** From the largest girth down. */
  readonly openings: readonly Opening[];
  /** Of what is worn over the face: uses that no opening has. */
  readonly lacks: readonly OpeningUse[];
  /** Null when nothing was said to pass. */
  readonly goesOn: boolean | null;
  /** Where it would split and close when it does not go on; null where no seam leads from rim to rim. */
  readonly splitAt: OpeningSeams | null;
}
