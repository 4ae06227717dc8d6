import type { SeamId } from '../base/ids.ts';
import type { SteepWay } from './steep-join.ts';

/**
 * How the two sides of a seam meet (foam model 4). `butt`: edge to edge; `lap`: one goes on over or under the other; `rebate`: one stands on
 * the inner side of the other, which runs on past it. `open` is an edge of the prop. A fold stays joined and is no seam.
 */
export type SeamKind = JoinKind | 'open';

/** The kinds a maker can choose. */
export type JoinKind = 'butt' | 'lap' | 'rebate';

/** A point on the sculpt: a polygon of the file and weights on its corners, or a vertex of the file named by its number. */
export type SurfacePoint = { readonly vertex: number } | { readonly face: number; readonly bary: readonly number[] };

/** A side of a path, along it and seen from outside. */
export type PathSide = 'left' | 'right';

/** How the foam is joined again along a path; each field as in {@link SeamSetting} and the wishes for an edge. */
export interface PathJoin {
  readonly kind: JoinKind;
  /** Missing: 0. */
  readonly allowanceMm?: number;
  /** The side that carries the lap. Missing: as for any seam. */
  readonly lapSide?: PathSide;
  readonly lapUnder?: boolean;
  /** The side that stands on the other at a rebate. */
  readonly standSide?: PathSide;
  readonly steep?: SteepWay;
  readonly holdLength?: boolean;
  readonly straight?: boolean;
}

/**
 * A line drawn on the surface that parts the foam. Its points may be few: those that share no triangle are joined by a shortest line. It carries
 * what is wished for the seams along it itself, because the edges it is cut into have numbers that another path may change. `locked` lines are
 * never moved by a proposal.
 */
export interface SeamPath extends PathJoin {
  readonly points: readonly SurfacePoint[];
  readonly locked?: boolean;
}

/** What the maker marked: pairs of vertices in file numbers, and paths. The same shape as a seam file. */
export interface SeamMarks {
  readonly edges: readonly (readonly [number, number])[];
  readonly paths: readonly SeamPath[];
}

export const NO_SEAMS: SeamMarks = { edges: [], paths: [] };

/** Marks brought onto the mesh: which of its edges are cut. Open edges of the mesh are not in here; they are edges of the foam anyway. */
export interface SeamSet {
  /** 1 for each edge of the mesh's topology that is a seam. */
  readonly isSeam: Uint8Array;
  readonly count: number;
}

/**
 * A seam is a chain of mesh edges along which the same two patches meet (or one patch meets itself: a dart or a closing seam),
 * without a branch. Open edges of the prop are chains too, of kind `open`, with one side.
 */
export interface SeamChain {
  readonly id: SeamId;
  /** A, B, C … Z, AA: what is printed at both sides. */
  readonly letter: string;
  readonly kind: SeamKind;
  /** Vertices of the mesh from one end to the other; a closed chain repeats its first. */
  readonly vertices: Uint32Array;
  readonly closed: boolean;
  /** Side 0 lies to the left of the chain seen from outside, side 1 to the right; an open edge has side 0 only. */
  readonly sides: readonly SeamSide[];
  /** Signed turn between the outward normals at each edge of the chain, radians; convex > 0. One per edge. */
  readonly foldRad: Float64Array;
  /** Allowance added outside the seam on `lapSide`, mm; 0 for butt seams unless the maker asks otherwise. */
  readonly allowanceMm: number;
  /** Side that carries the allowance. */
  readonly lapSide: 0 | 1;
  /** Of a lap: the side that lies on top, seen from the face. */
  readonly topSide?: 0 | 1;
  /** Of a rebate: the side that stands on the other. */
  readonly standSide?: 0 | 1;
  /** Of a butt seam: how it is built where it is too sharp for the blade. */
  readonly steep?: SteepWay;
}

/** One side of a seam: where it runs on a patch. */
export interface SeamSide {
  /** Index of the patch in the list of patches. */
  readonly patch: number;
  /** Local vertices of the patch in the order of the chain's `vertices`. */
  readonly localVertices: Uint32Array;
}

/** The maker's wishes for one seam, tied to an edge it runs through (file numbers), so that they survive a change elsewhere. */
export interface SeamSetting {
  readonly edge: readonly [number, number];
  readonly kind: JoinKind;
  readonly allowanceMm: number;
  /** The piece that carries the lap is the one holding this polygon of the file. */
  readonly lapFace?: number;
  /** True where the lap goes under the other piece; left out where it lies on top. */
  readonly lapUnder?: boolean;
  /** The piece that stands on the other at a rebate is the one holding this polygon of the file; left out, the smaller one. */
  readonly standFace?: number;
  /** How a butt seam is built where it is too sharp for the blade; left out, with edges nobody can saw. */
  readonly steep?: SteepWay;
}

/** A setting of a mesh that was cut along paths: sides may be named by triangles of it, because both sides of a path may lie on one polygon. */
export interface PlacedSetting extends SeamSetting {
  readonly lapTriangle?: number;
  readonly standTriangle?: number;
}
