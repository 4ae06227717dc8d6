import type { Finding } from '../../base/finding.ts';
import type { ModelFormat } from '../../model/source-model.ts';

/** What the parser of a format found, in the numbers of the file: nothing joined, nothing left out. */
export interface RawModel {
  readonly format: ModelFormat;
  /**
   * x y z per number, units of the file, finite, without negative zeros. OBJ: one number per `v` line. STL: numbers stand for exactly
   * equal corners, counted by first appearance.
   */
  readonly points: Float64Array;
  /** r g b per number, 0 to 1, or null. */
  readonly colours: Float64Array | null;
  /** `v` lines of an OBJ, three per facet of an STL. */
  readonly cornersInFile: number;
  /** Face `f` has corners `faceCorners[faceStarts[f] .. faceStarts[f + 1])`, three or more, each below the count of points. */
  readonly faceStarts: Uint32Array;
  readonly faceCorners: Uint32Array;
  readonly groupNames: readonly string[];
  /** Index into `groupNames` per face, or -1. */
  readonly groupOfFace: Int32Array;
  /** Where face `f` stands in the file, for people: `line 12`, `facet 3`. */
  placeOfFace(f: number): string;
  readonly findings: readonly Finding[];
}
