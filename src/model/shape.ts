import type { Finding } from '../base/finding.ts';
import type { OutlineSegment } from '../geom/outline.ts';
import type { Vec2, Vec3 } from '../geom/vec.ts';
import type { SizeValues } from './shape-size.ts';

/** A run of an outline with one meaning: what it is called, what it is glued to and how it is cut. */
export interface ShapeEdge {
  readonly name: string;
  readonly segments: readonly OutlineSegment[];
  /** In the flat piece, mm. */
  readonly lengthMm: number;
  /** On the finished shape, mm; other than `lengthMm` only where the piece must stretch. */
  readonly trueLengthMm: number;
  /** Blade lean from square, degrees, at both ends and half-way, between which it changes evenly; positive: the back stands inside the face. */
  readonly bevelDeg: { readonly from: number; readonly middle: number; readonly to: number };
  /** The seam it belongs to: two edges of one name are glued together, of one piece with itself or with the next like it. */
  readonly seam?: string;
  /** The kind of piece it is glued to, where it is one panel of many. */
  readonly meets?: string;
}

/** A line in a piece along which it is folded, or along which a bend runs straight. */
export interface ShapeFold {
  readonly from: Vec2;
  readonly to: Vec2;
  /** Turn along it, degrees, convex > 0; 0 for a line of a bend. */
  readonly angleDeg: number;
}

export interface ShapeMark {
  readonly name: string;
  readonly at: Vec2;
}

/** How a piece is brought into its form: left flat, rolled to a radius that stays or changes (mm, of the neutral surface), folded, or stretched. */
export interface ShapeBend {
  readonly kind: 'flat' | 'rolled' | 'folded' | 'formed';
  readonly leastRadiusMm?: number;
  readonly greatestRadiusMm?: number;
}

/** A flat piece of a shape, seen from its face, mm, y up. */
export interface ShapePiece {
  readonly name: string;
  readonly quantity: number;
  /** Counter-clockwise round the piece. */
  readonly outline: readonly ShapeEdge[];
  /** Clockwise, each. */
  readonly holes: readonly (readonly ShapeEdge[])[];
  /** Inside the outline less the holes, mm². */
  readonly areaMm2: number;
  readonly bend: ShapeBend;
  readonly folds: readonly ShapeFold[];
  readonly marks: readonly ShapeMark[];
}

/** Two edges that are glued together, with the length each has in its flat piece, mm. */
export interface ShapeSeam {
  readonly name: string;
  readonly pieces: readonly [string, string];
  readonly edges: readonly [string, string];
  readonly lengthMm: readonly [number, number];
}

/** A named figure of a shape. `of`: the part it belongs to, where several have the same figures. */
export interface ShapeMeasure {
  readonly name: string;
  readonly value: number | readonly number[];
  readonly unit: string;
  readonly of?: string;
}

/** A side of a patch: where u or v is 0 or 1. */
export type PatchSide = 'u0' | 'u1' | 'v0' | 'v1';

/**
 * A part of the finished surface that one piece covers, for checking: places (u, v) from 0 to 1 on the shape and, where the piece only bends,
 * in the flat piece. u runs round or along the piece, v across it; the outside lies left of u × v.
 */
export interface ShapePatch {
  readonly piece: string;
  readonly solid: (u: number, v: number) => Vec3;
  readonly flat?: (u: number, v: number) => Vec2;
  /** How finely a mesh of it is made: facets along u and along v, as shares of the facets of a whole turn; 1 and 0 when left out. */
  readonly facets?: readonly [along: number, across: number];
  /** Sides that are cut; all when left out. Sides at which nothing else begins are the rims of the shape. */
  readonly cut?: readonly PatchSide[];
}

/** Flat polygons in space, for checking: corners and, for each face, their numbers counter-clockwise seen from outside. */
export interface ShapeFaces {
  readonly corners: readonly Vec3[];
  readonly faces: readonly (readonly number[])[];
}

/** A shape developed: everything that is known of it from its sizes. */
export interface Shape {
  readonly name: string;
  readonly sizes: SizeValues;
  readonly measures: readonly ShapeMeasure[];
  readonly pieces: readonly ShapePiece[];
  readonly seams: readonly ShapeSeam[];
  readonly warnings: readonly Finding[];
  /** The finished surface, where the shape has one. */
  readonly patches: readonly ShapePatch[];
  readonly solid: ShapeFaces | null;
}
