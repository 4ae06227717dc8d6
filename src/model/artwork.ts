import type { Affine } from '../geom/affine.ts';
import type { Ring } from '../geom/ring.ts';
import type { Vec2 } from '../geom/vec.ts';

/** A straight part of a line. */
export interface ArtLine {
  readonly kind: 'line';
  readonly from: Vec2;
  readonly to: Vec2;
}

/** A cubic Bezier curve; one of second order is raised to it, which is exact. */
export interface ArtCubic {
  readonly kind: 'cubic';
  readonly from: Vec2;
  readonly handles: readonly [Vec2, Vec2];
  readonly to: Vec2;
}

/**
 * Part of an ellipse: `centre + cos(t) u + sin(t) v` for t from `start` over `turn`, radians. `u` and `v` are two half diameters, each along
 * the tangents at the other's ends, not always its axes: any affine map keeps them so. A circle where they are as long and square.
 */
export interface ArtArc {
  readonly kind: 'arc';
  readonly from: Vec2;
  readonly to: Vec2;
  readonly centre: Vec2;
  readonly u: Vec2;
  readonly v: Vec2;
  readonly start: number;
  readonly turn: number;
}

/** An exact part of a line of artwork, mm, y up. */
export type ArtSegment = ArtLine | ArtCubic | ArtArc;

/** One line without a break, as it was drawn: each part begins where the one before ends, a closed one ends where it began. */
export interface ArtPath {
  readonly segments: readonly ArtSegment[];
  readonly isClosed: boolean;
}

/** How the inside of lines is told where they run round a place more than once. */
export type ArtFillRule = 'nonzero' | 'evenodd';

/** How the end and the corner of a stroke are drawn. */
export interface ArtStroke {
  /** mm, >= 0. */
  readonly widthMm: number;
  readonly cap: 'butt' | 'round' | 'square';
  readonly corner: 'miter' | 'round' | 'bevel';
  readonly miterLimit: number;
}

/** A shape of the drawing, mm, y up. */
export interface ArtShape {
  /** Its title, label or id, or what it is and which of its kind. */
  readonly name: string;
  /** Number of the piece it belongs to. */
  readonly piece: number;
  readonly paths: readonly ArtPath[];
  readonly fill: ArtFillRule | null;
  readonly stroke: ArtStroke | null;
}

/** All shapes of a drawing, and the names of the pieces they make. */
export interface ArtDrawing {
  readonly shapes: readonly ArtShape[];
  readonly pieces: readonly string[];
  /** mm of the page from units of the drawing, y up. */
  readonly mmFromUser: Affine;
}

/** One closed line, exact and as straight parts. */
export interface ArtOutline {
  /** The shape it was drawn as; null where lines that cross were made one. */
  readonly shape: string | null;
  /** Exact parts; null where lines that cross were made one and only the straight parts are known. */
  readonly path: ArtPath | null;
  /** Outer ones run counter-clockwise, holes clockwise, within the deviation of the curve. */
  readonly ring: Ring;
  /** True length and area of the curve, mm and mm² > 0; of the straight parts where `path` is null. */
  readonly lengthMm: number;
  readonly areaMm2: number;
}

/** One connected area with its holes. `areaMm2`: without the holes. */
export interface ArtRegion {
  readonly outline: ArtOutline;
  readonly holes: readonly ArtOutline[];
  readonly areaMm2: number;
}

/** A line that bounds nothing: open. Packed points beside the exact parts. */
export interface ArtOpenLine {
  readonly shape: string;
  readonly path: ArtPath;
  readonly points: Float64Array;
  readonly lengthMm: number;
}

/** What one group, or one shape outside of all groups, comes to. */
export interface ArtPiece {
  readonly name: string;
  readonly regions: readonly ArtRegion[];
  readonly lines: readonly ArtOpenLine[];
  /** Of its regions, holes taken off. */
  readonly areaMm2: number;
  /** Of all outlines, holes and open lines: what is cut. */
  readonly lengthMm: number;
}

/** Flat artwork in its true size, mm, y up. */
export interface Artwork {
  readonly pieces: readonly ArtPiece[];
  /** Round all lines, mm. */
  readonly widthMm: number;
  readonly heightMm: number;
  /** mm of the finished artwork for one mm of the file: 1 where no length was given. */
  readonly scale: number;
  /** Greatest distance of straight parts from their curve, mm. */
  readonly deviationMm: number;
}
