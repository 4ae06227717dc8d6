import type { Problem } from '../base/result.ts';
import type { Vec3 } from '../geom/vec.ts';
import type { Triple } from './girth.ts';
import type { ModelFormat, ModelUnit } from './source-model.ts';

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

/** A core of any form, from a model file of its own. */
export interface CoreModel {
  readonly kind: 'model';
  readonly id: string;
  readonly name: string;
  /** Its file; the bytes are kept beside the document, as the sculpt's are. */
  readonly source: { readonly hash: string; readonly fileName: string; readonly format: ModelFormat };
  /** Unit of its file; `sculpt`: its numbers mean what the sculpt's mean, and it grows with the sculpt. */
  readonly unit: ModelUnit | 'sculpt';
  /** Where the zero of its file stands, in the numbers of the sculpt's file. */
  readonly pointInFile: Triple;
  /** Turned about the zero of its file: about x, then y, then z, degrees. Missing: as in the file. */
  readonly turnDeg?: Triple;
  /** Room wanted all round, mm, >= 0. Missing: 0. */
  readonly roomMm?: number;
}

export type Core = CoreRod | CoreModel;

export const isCoreModel = (core: Core): core is CoreModel => 'kind' in core;

/**
 * How a core of any form stands to the back of the foam: inside it with room all round, through it, outside of it, or so large that it
 * holds all of the foam.
 */
export type CoreStand = 'inside' | 'crosses' | 'outside' | 'swallows';

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
  readonly core: Core;
  /** Null where no foam lies along the core, or it could not be read. */
  readonly tightest: TightestPlace | null;
  /** Clearance at each vertex of the back surface, mm; NaN beyond the ends of the core. For colours. */
  readonly atVertices: Float32Array;
  /** How it stands, drawn: closed lines, packed x y z without a repeated last point, mm, model space. */
  readonly outline: readonly Float64Array[];
  /** How often the axis of a rod runs through the foam within its length: holes to cut. Of a model: triangles of the back that run into it. */
  readonly pierced: number;
  /** Of a model alone. */
  readonly stand?: CoreStand;
  /** Of a model alone: open edges of its file. Where it has some, inside and outside are told from the nearest face. */
  readonly openEdges?: number;
  /** Of a model that could not be read: why. */
  readonly problem?: Problem;
  /** Size, as a multiple of the present one, at which the room is the one wanted; null: none found. */
  readonly sizeFactor: number | null;
  /** How far all of the foam must be moved outward for that, mm, inward negative; null: none found. */
  readonly moveMm: number | null;
}
