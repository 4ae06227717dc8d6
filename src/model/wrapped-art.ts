import type { Finding } from '../base/finding.ts';
import type { Vec2, Vec3 } from '../geom/vec.ts';
import type { MeshLine, MeshPoint } from '../mesh/lines/mesh-line.ts';

/** Where artwork sits on a surface. */
export interface ArtSeat {
  readonly at: MeshPoint;
  /** Direction in space that the artwork's x points to there, any length but 0; seen square to the surface. */
  readonly along: Vec3;
  /** Place of the artwork that comes to lie there, mm, and how it is turned about it, radians, counter-clockwise. */
  readonly origin: Vec2;
  readonly turnRad: number;
}

/** A line of artwork. `points`: x y packed, mm, y up; a closed line repeats no point. */
export interface ArtStroke {
  readonly name: string;
  readonly points: Float64Array;
  readonly closed: boolean;
}

/** How much longer the surface makes a stretch of a line, per cent: < 0 shorter. `atMm`: its middle, along the line as drawn. */
export interface ArtStretch {
  readonly atMm: number;
  readonly percent: number;
}

/** A line of artwork as it lies on the surface; several parts of one stroke where it runs over an edge of the surface. */
export interface WrappedLine {
  readonly name: string;
  /** Which stroke, from 0. */
  readonly stroke: number;
  readonly line: MeshLine;
  /** As drawn and on the surface, mm. */
  readonly drawnMm: number;
  readonly lengthMm: number;
  readonly stretch: readonly ArtStretch[];
}

/** Artwork laid on a surface. */
export interface WrappedArt {
  readonly lines: readonly WrappedLine[];
  /** Most and least of all stretches, per cent. */
  readonly mostStretchPercent: number;
  readonly leastStretchPercent: number;
  /** How much of it runs over an edge of the surface, mm of line as drawn. */
  readonly lostMm: number;
  readonly findings: readonly Finding[];
}
