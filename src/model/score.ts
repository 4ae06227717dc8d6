/**
 * A slit in the face that is no seam: the warmed foam opens along it, as panel lines and wood grain are made. It follows edges of the sculpt
 * and is cut into the outermost sheet of the wall alone.
 */
export interface ScoredLine {
  /** Its own in the part. */
  readonly id: string;
  /** Edges it runs along, file numbers, in the order of the line; one or more. */
  readonly edges: readonly (readonly [number, number])[];
  /** How deep the knife goes, from the face, mm, over 0. */
  readonly depthMm: number;
  /** How wide it stands open at the face once it was warmed, as measured on a scrap, mm, 0 or more. Changes no size of the piece. */
  readonly openMm: number;
}

/** A line round an area on whose face a sheet is laid. */
export interface OutlineLine {
  /** Id of the area, and its name. */
  readonly area: string;
  readonly name: string;
  /** Edges of the sculpt it runs along, file numbers, each from the end of the last. */
  readonly edges: readonly (readonly [number, number])[];
}

/** What of such a line runs over one piece: where the raised sheet ends that is glued on there. */
export interface PieceOutline {
  readonly area: string;
  readonly name: string;
  /** In the piece's frame, `x y x y`, mm. Its own points serve: the foam carries them along as it bends. */
  readonly points: Float64Array;
}

/** What of a scored line lies on one piece. */
export interface PieceScore {
  readonly line: string;
  /** Points along it in the piece's frame, `x y x y`, two or more, mm. */
  readonly points: Float64Array;
  readonly depthMm: number;
  readonly openMm: number;
}
