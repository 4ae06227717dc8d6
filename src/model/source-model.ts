import type { Finding } from '../base/finding.ts';
import type { BodyTie } from './body-measures.ts';
import type { ModelFacts } from './model-facts.ts';

/** Length units a model file may be written in. */
export type ModelUnit = 'mm' | 'cm' | 'm' | 'in';

export const MM_PER_UNIT: Readonly<Record<ModelUnit, number>> = { mm: 1, cm: 10, m: 1000, in: 25.4 };

export type ModelFormat = 'obj' | 'stl';

/**
 * What a file says, before it has a size: numbers as stored, polygons as stored, coincident corners joined.
 *
 * Corners that were joined share one vertex here. `vertexOfFile` leads from every number of the file to its vertex, so that seams
 * can be written in the numbers a maker sees in the file. For STL, which has no numbers, corners are numbered by first appearance
 * after exactly equal ones were joined. Repairs append numbers at the end.
 */
export interface SourceModel {
  readonly format: ModelFormat;
  /** SHA-256 of the file's bytes, 64 hex digits. */
  readonly hash: string;
  readonly fileName: string;
  /** x y z per vertex, units of the file. Only vertices that a face uses. */
  readonly positions: Float64Array;
  /** r g b per vertex, 0 to 1, or null when the file has none. */
  readonly colours: Float64Array | null;
  /** Lowest number in file order of each vertex. Ascending. */
  readonly fileVertex: Uint32Array;
  readonly vertexOfFile: Int32Array;
  /** Polygon `f` has corners `faceVertices[faceStarts[f] .. faceStarts[f + 1])`, counter-clockwise from outside. */
  readonly faceStarts: Uint32Array;
  readonly faceVertices: Uint32Array;
  /** Number in the file of each polygon still here, counted from 0; ascending. Dropped polygons are missing. */
  readonly faceNumber: Uint32Array;
  /** How many polygons the file had, plus those that repairs added. */
  readonly fileFaceCount: number;
  readonly groupNames: readonly string[];
  /** Index into `groupNames` per polygon here, or -1. */
  readonly groupOfFace: Int32Array;
  /** Triangles of the polygons, by earcut in the face's own plane; three vertices each. */
  readonly triangles: Uint32Array;
  /** Polygon (index here, not in the file) of each triangle. */
  readonly faceOfTriangle: Uint32Array;
  readonly joined: JoinCounts;
  /** Counts as they stood before near corners were joined; left out where none were, for then they are the model's own. */
  readonly afterExactJoin?: ModelFacts['afterExactJoin'];
  /** What the reader noticed on the way. */
  readonly findings: readonly Finding[];
}

export interface JoinCounts {
  /** Corners in the file: `v` lines of an OBJ, three per facet of an STL. */
  readonly inFile: number;
  /** Used vertices after joining exactly equal ones. */
  readonly afterExact: number;
  /** Used vertices after joining within `toleranceUnits`. */
  readonly afterNear: number;
  /** Distance within which corners were joined, units of the file. */
  readonly toleranceUnits: number;
}

/** How a model without a unit gets its size: one unit, one real dimension, or a measure of the body that it follows. */
export type ScaleChoice = GivenScale | ({ readonly by: 'body' } & BodyTie);

/** A size that stands by itself. */
export type GivenScale =
  | { readonly by: 'unit'; readonly unit: ModelUnit }
  | { readonly by: 'size'; readonly axis: 'longest' | 'x' | 'y' | 'z'; readonly mm: number }
  | { readonly by: 'points'; readonly from: number; readonly to: number; readonly mm: number };

/** A change to the model that the maker asked for; applied in order, each one an undoable command. Vertices and faces are file numbers. */
export type Repair =
  | { readonly kind: 'turn-faces' }
  | { readonly kind: 'drop-doubled' }
  | { readonly kind: 'drop-empty' }
  | { readonly kind: 'close-hole'; readonly edge: readonly [number, number] }
  | { readonly kind: 'keep-shell'; readonly vertex: number };
