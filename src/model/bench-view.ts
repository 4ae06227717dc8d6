import type { Finding } from '../base/finding.ts';
import type { Problem } from '../base/result.ts';
import type { SerialisedTree } from '../geom/bvh.ts';
import type { Vec3 } from '../geom/vec.ts';
import type { DryFit } from './dry-fit.ts';
import type { Template } from './template.ts';
import type { FileGroup } from './file-group.ts';
import type { FoamPiece, FoamSeam } from './foam-piece.ts';
import type { FoamStrip } from './foam-strip.ts';
import type { ModelFacts } from './model-facts.ts';
import type { BodyFit } from './body-fit.ts';
import type { CutOffer, PatchKind } from './patch.ts';
import type { PlainPiece, PlainStep } from './plain-piece.ts';
import type { PageSet } from './page.ts';
import type { SeamChain } from './seams.ts';
import type { SheetLayout } from './sheet.ts';
import type { Springing } from './springing.ts';
import type { JoinCounts } from './source-model.ts';
import type { Spread } from './flat-piece.ts';

/**
 * What the screen needs of one computed project, in parts that cross from the worker only when they changed. A part left out (undefined)
 * in an update means: as before. Single precision, because it is only drawn.
 */
export interface BenchUpdate {
  /** Counts the updates, from 1. The screen names the last one it took, so that nothing is left out that it does not have. */
  readonly number: number;
  readonly sculpt?: SculptView | null;
  /** The box tree of a sculpt that was sent before without one. */
  readonly tree?: SerialisedTree;
  readonly shell?: ShellView | null;
  readonly seams?: SeamsView | null;
  readonly pieces?: PiecesView | null;
  readonly sheets?: SheetLayout | null;
  readonly paper?: PageSet | null;
  /** Parts that no sculpt is parted for, in the order of the project. */
  readonly plain?: readonly PlainPartView[];
  /** Sculpts that are not worked on. */
  readonly sculptsBeside?: readonly SculptBesideView[];
  readonly bodyFit?: BodyFit | null;
  readonly dryFit?: DryFit | null;
  readonly springing?: Springing | null;
  readonly mirror?: MirrorView | null;
  /** All findings of all steps that ran, in the order of the job. Always present. */
  readonly findings: readonly Finding[];
  /** The first step that could not go on, and why; null when the whole chain ran. */
  readonly stopped: { readonly step: StepName; readonly problem: Problem } | null;
  /** Steps whose result was made new in this run, for progress display and tests. */
  readonly madeNew: readonly StepName[];
}

/** What can be shown before a run is done: of the parts of an update those that changed. What follows from them is as it was. */
export type EarlyUpdate = Pick<BenchUpdate, 'number' | 'sculpt' | 'tree' | 'shell' | 'seams' | 'pieces'>;

export type StepName = 'read' | 'size' | 'seams' | 'shell' | 'cut' | 'flatten' | 'foam' | 'nest' | 'tile';

/** The sculpt in mm with what picking and marking need. Also sent before the size is known, in file units, with `sized` false. */
export interface SculptView {
  readonly positions: Float32Array;
  readonly triangles: Uint32Array;
  readonly faceOfTriangle: Uint32Array;
  readonly fileVertex: Uint32Array;
  /**
   * What the document calls each edge, two numbers each: the edge of the sculpt that it is a part of, by its corners in the file, or the path it
   * runs along (`pathName`); twice the same where it is none. Left out where no path was cut: then an edge is named by its own corners.
   */
  readonly edgeNames?: Int32Array;
  /** For each edge along a path 1 where that runs from its first vertex to its second, -1 against; 0 for the others. Left out likewise. */
  readonly edgePathWay?: Int8Array;
  /** Edges of the topology: vertex pairs, fold in radians, 1 for diagonals inside a polygon, 1 for open edges. */
  readonly edgeVertices: Uint32Array;
  readonly edgeFoldRad: Float32Array;
  readonly edgeIsDiagonal: Uint8Array;
  readonly edgeIsOpen: Uint8Array;
  /** r g b per vertex, 0 to 1, or null. */
  readonly colours: Float32Array | null;
  /** Groups of the file that a border can be drawn round. */
  readonly groups: readonly FileGroup[];
  readonly sized: boolean;
  readonly mmPerUnit: number | null;
  readonly facts: ModelFacts;
  readonly joined: JoinCounts;
  /** The box tree over `triangles`, so that picking needs no building on the main thread; null at a first look, see `BenchUpdate.tree`. */
  readonly bvh: SerialisedTree | null;
}

/** The mirror in force. */
export interface MirrorView {
  /** All points with `normal . x = at`; length 1, mm. */
  readonly normal: Vec3;
  readonly at: number;
  /** Share of the area that mirrors itself within the tolerance, 0 to 1. */
  readonly share: number;
  readonly toleranceMm: number;
  /** For each number of the file that of the corner opposite, itself on the plane, or -1. */
  readonly partnerOfFile: Int32Array;
}

/** Face and back of the foam for every vertex of the sculpt, mm. */
export interface ShellView {
  readonly facePositions: Float32Array;
  readonly backPositions: Float32Array;
  readonly thicknessMm: number;
  /** k, the neutral surface's place counted from the back, 0 to 1. */
  readonly neutralFraction: number;
}

export interface SeamsView {
  /** Per edge of the topology: index of its chain, or -1. */
  readonly chainOfEdge: Int32Array;
  readonly chains: readonly SeamChain[];
}

export interface PiecesView {
  /** False for shapes sent ahead while the work goes on: pieces not done yet are bare outlines, and seams are as they were. */
  readonly isFinal: boolean;
  /** Per triangle of the sculpt the index of its patch in the sheet on the bench. */
  readonly patchOfTriangle: Int32Array;
  /** Of all sheets of foam, those of the sheet on the bench first; a piece's `patch` counts in this list. */
  readonly patches: readonly PatchView[];
  /** How many of the patches, the first ones, are of the sheet on the bench: they lie on the sculpt. */
  readonly benchPatches: number;
  /** Which sheet of the wall lies on the bench, 1 the outermost. */
  readonly sheet: number;
  /** Of the sculpt that is worked on, as are seams and offers. */
  readonly pieces: readonly FoamPiece[];
  readonly seams: readonly FoamSeam[];
  /** Strips that are cut beside the pieces; left out while shapes are sent ahead. */
  readonly strips?: readonly FoamStrip[];
  /** Pieces of parts that no sculpt is parted for; left out as strips are. */
  readonly plain?: readonly PlainPiece[];
  /** Pieces of the sculpts that are not worked on, `patch` as in their own sheets; left out where there are none, and as strips are. */
  readonly others?: readonly FoamPiece[];
  /** Of pieces, pieces of other sculpts, strips and plain pieces. */
  readonly templates: readonly Template[];
  readonly cutOffers: readonly CutOffer[];
}

/** The finished prop: all pieces of the wall put together as they were cut, inner sheets first. */
export interface PropView {
  readonly plates: readonly PropPlate[];
}

/** One finished piece in its place as a thick plate, single precision. */
export interface PropPlate {
  /** Index of the piece among all of the part. */
  readonly piece: number;
  /** Which sheet of the wall it is of, 1 the outermost. */
  readonly sheet: number;
  /** Its place in the order of putting together, from 0. */
  readonly order: number;
  readonly triangles: Uint32Array;
  /** x y z per vertex, mm, model space. */
  readonly face: Float32Array;
  readonly back: Float32Array;
}

/** One patch in 3D and flat. `piece` is its index in `pieces`, or -1 when it cannot be laid flat yet. */
export interface PatchView {
  readonly piece: number;
  readonly kind: PatchKind;
  readonly meshTriangles: Uint32Array;
  readonly triangles: Uint32Array;
  readonly meshVertices: Uint32Array;
  /** Face and back of its foam, x y z per local vertex, mm; left out where they are those of the sheet (`ShellView`). */
  readonly skins?: { readonly face: Float32Array; readonly back: Float32Array };
  /** False while the flat shape is still being bettered: valid and measured as it is, but not the last one. */
  readonly isFinal: boolean;
  /** x y per local vertex, mm, in the piece's frame, or null. */
  readonly uv: Float32Array | null;
  /** Per triangle: stretch and squash in per cent, and the direction of the stretch in the flat piece, radians. */
  readonly stretchPct: Float32Array | null;
  readonly squashPct: Float32Array | null;
  readonly majorAngle: Float32Array | null;
  readonly stretchSpread: Spread | null;
  readonly squashSpread: Spread | null;
}

/** A sculpt that is not worked on, as it stands beside the one that is. */
export interface SculptBesideView {
  readonly part: string;
  /** The face of its foam, as {@link PlainPartView.form}. */
  readonly form: Float32Array;
}

/** A part that no sculpt is parted for, as it stands on the bench and in lists. */
export interface PlainPartView {
  readonly part: string;
  readonly name: string;
  readonly kind: string;
  /** False where its figures do not let it be made: a finding says why. */
  readonly isMade: boolean;
  readonly steps: readonly PlainStep[];
  /** Numbers and ids of its pieces by their keys. */
  readonly pieces: readonly { readonly key: string; readonly id: string; readonly number: number }[];
  /** The finished part in its place, in the frame of the sculpt on the bench, mm: x y z per corner, three corners a triangle; null where it has no form. */
  readonly form: Float32Array | null;
}
