import type { Mesh } from '../../mesh/mesh.ts';
import type { FlatPiece } from '../../model/flat-piece.ts';
import type { FlattenWishes } from '../../model/flatten-settings.ts';
import type { Patch } from '../../model/patch.ts';
import type { SeamSet } from '../../model/seams.ts';
import type { BendWish } from './tight-bends.ts';

/** What every piece of a proposal must keep. */
export interface ProposalLimits {
  /** 99th percentile of stretch and of squash, per cent, > 0. */
  readonly stretchPct: number;
  readonly squashPct: number;
  /** True where that by number of triangles must hold too, as research programs measure; else by area alone, as it is told of made pieces. */
  readonly isByNumberToo?: boolean;
  /** How the pieces are laid flat for the verdict: the same wishes make the same pieces later. */
  readonly laying: FlattenWishes;
  /** A piece must lie on a sheet of this size, turned as it likes, mm. */
  readonly sheet?: { readonly widthMm: number; readonly heightMm: number };
  /**
   * Parts of a piece narrower than this, mm, are told and priced, but no piece fails for one: a sculpt may have such a part itself, and what
   * lies between two darts is the maker's to judge. Held against every piece it made jigsaws of slivers, which are narrower still.
   */
  readonly leastWidthMm?: number;
  /**
   * Bends tighter than this are told. Where a seam would take one away it is priced, but no piece fails for it: on a narrow tube every piece
   * would, and what it is then best to do, thinner foam or kerfs, is no question of seams.
   */
  readonly bend?: BendWish;
}

/** As research programs measure: 5 %, no overlap, nothing held, no thickness. The worst is evened out because the limit is on the worst. */
export const REFERENCE_LIMITS: ProposalLimits = {
  stretchPct: 5,
  squashPct: 5,
  isByNumberToo: true,
  laying: { seamPrice: 0, squashPrice: 1, evenOut: true, keepApart: false },
};

/** Where a piece keeps its length. */
export interface PieceGround {
  /** x y z per vertex of the mesh, mm. */
  readonly positions: Float64Array;
  /** x y z of the three corners of each triangle of the patch, mm, where the piece takes its sizes from these. */
  readonly corners?: Float64Array;
  /** Then the lengths of border edges given as pairs of vertices of the patch, mm. */
  readonly lengthsOf?: (edges: Uint32Array) => Float64Array;
}

/** What is asked for. Arrays per edge go by the edges of the mesh's topology. */
export interface ProposalWish {
  readonly mesh: Mesh;
  /** Surface that is laid flat, x y z per vertex of the mesh, mm. */
  readonly positions: Float64Array;
  /** Where one piece keeps its length, where that may be elsewhere than on `positions`: on its hinges, of one with grooves. */
  readonly surfaceOf?: (patch: Patch) => PieceGround;
  readonly limits: ProposalLimits;
  /** Seams to begin with; none unless said. */
  readonly start?: SeamSet;
  /** 1 per edge that stays as it is at the start, seam or not. */
  readonly locked?: Uint8Array;
  /** 1 per triangle of a piece that stays as it is. */
  readonly fixedTriangles?: Uint8Array;
  /** Per edge what a seam costs there beside a plain one, which has 1; >= 0, Infinity where none may be. */
  readonly weights?: Float64Array;
  /** Per edge its partner beyond the mirror, itself on the mirror line, or -1: seams stay alike on both sides. */
  readonly mirror?: Int32Array;
  /** `few` pieces with darts (0) to more and simpler pieces (1). */
  readonly dial: 'few' | 'simple' | number;
  readonly seed: number;
}

/** What a proposal costs, over the root of the area; the sum is what is made small. */
export interface ProposalSum {
  readonly total: number;
  /** Seam length times weight, over the root of the area. */
  readonly length: number;
  /** Of sharp turns in seams. */
  readonly turns: number;
  readonly pieces: number;
  readonly darts: number;
  /** Of pieces under a hundredth of the area, or narrower than may be. */
  readonly slivers: number;
  /** Of tight bends along which a seam would help. */
  readonly bends: number;
}

/** Which limit a piece breaks, by how many times, and where. */
export interface LimitReason {
  readonly limit: 'stretch' | 'squash' | 'overlap' | 'sheet' | 'width' | 'cut' | 'bend';
  readonly piece: number;
  /** Measure over limit, > 1. */
  readonly share: number;
  /** Triangle of the mesh where it is worst. */
  readonly triangle: number;
  /** Angle defect inside the piece, radians: what its inner vertices miss to a full turn, all added without sign. */
  readonly defectRad: number;
  readonly text: string;
}

export interface ProposedPiece {
  readonly patch: Patch;
  /** Null where the piece cannot be laid flat. */
  readonly flat: FlatPiece | null;
  readonly areaMm2: number;
  /** 99th percentile, per cent: by area, or the larger of that and by number. */
  readonly stretch99: number;
  readonly squash99: number;
  readonly overlaps: number;
  readonly dartCount: number;
  readonly isFeasible: boolean;
}

export interface Proposal {
  readonly seams: SeamSet;
  /** The seams as pairs of vertices of the mesh, lower first. */
  readonly edges: readonly (readonly [number, number])[];
  readonly pieces: number;
  readonly lengthMm: number;
  readonly lengthOverRootArea: number;
  /** Seam ends inside a piece. */
  readonly dartCount: number;
  readonly sum: ProposalSum;
  readonly perPiece: readonly ProposedPiece[];
  readonly feasible: boolean;
  /** Why not, worst first; where feasible there are tight bends alone. */
  readonly reasons: readonly LimitReason[];
  /** Changes tried before this one was found. */
  readonly moves: number;
}
