import type { Vec3 } from '../geom/vec.ts';
import type { Triple } from './girth.ts';

/** A rod or pipe that the part sits on. Its place is kept in the numbers of the model file, its size in mm: it does not grow with the sculpt. */
export interface CoreRod {
  readonly id: string;
  readonly name: string;
  /** Middle of the axis, in the numbers of the file. */
  readonly pointInFile: Triple;
  /** Along the axis; any length but 0. */
  readonly direction: Triple;
  /** Outside diameter, mm, > 0. */
  readonly diameterMm: number;
  /** Length over which foam must keep clear of it, mm, > 0; missing: all along. */
  readonly lengthMm?: number;
  /** Room wanted all round, mm, >= 0. Missing: 0. */
  readonly roomMm?: number;
}

/** Where foam comes nearest to a core. */
export interface TightestPlace {
  /** Distance between both, mm; negative: how deep the core stands in the foam. */
  readonly clearanceMm: number;
  /** On the back surface, mm, model space. */
  readonly point: Vec3;
  /** Triangle of the back surface it lies on. */
  readonly triangle: number;
}

/** How a part fits over a core. */
export interface CoreFit {
  readonly core: CoreRod;
  /** Null where no foam lies along the core. */
  readonly tightest: TightestPlace | null;
  /** Clearance at each vertex of the back surface, mm; NaN beyond the ends of the core. For colours. */
  readonly atVertices: Float32Array;
  /** How often the axis runs through the foam within the core's length: holes to cut. */
  readonly pierced: number;
  /** Size, as a multiple of the present one, at which the room is the one wanted; null: none found. */
  readonly sizeFactor: number | null;
  /** How far all of the foam must be moved outward for that, mm, inward negative; null: none found. */
  readonly moveMm: number | null;
}
