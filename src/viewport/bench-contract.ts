import { DRY_FIT_MM } from '../base/tolerance.ts';

/** What lies under the pointer, in the numbering of the records on show. */
export interface BenchPick {
  /** edge: within reach of a seam, or of any edge while the edge tool is on. surface: the whole sculpt. piece: a piece on its way or flat. */
  readonly kind: 'surface' | 'edge' | 'piece' | 'part' | 'sheet' | 'nothing';
  /** Id of the part whose form it is, where no sculpt was parted for it. */
  readonly part?: string;
  /** Triangle of the sculpt. */
  readonly triangle?: number;
  /** Edge of the sculpt's topology. */
  readonly edge?: number;
  /** With the edge tool: the seam or open edge within reach, by its edge, even where another edge is nearer. */
  readonly border?: number;
  /** Vertex of the sculpt nearest to the pointer on that triangle. */
  readonly vertex?: number;
  /** True where it is the sculpt itself (or its foam in place), not a piece on its way or flat. */
  readonly onSculpt?: boolean;
  /** Index into the pieces on show. */
  readonly piece?: number;
  /** Index of the seam's chain. */
  readonly seam?: number;
  /** Index of the sheet in the layout. */
  readonly sheet?: number;
  /** Place on the sculpt, mm, model space. */
  readonly point?: readonly [number, number, number];
  /** Through the foam, in the plane that cuts it open, mm. */
  readonly thicknessMm?: number;
  /** Of the triangle, per cent. */
  readonly stretchPct?: number;
  readonly squashPct?: number;
}

export interface BenchEvents {
  /** The pointer came to another thing or place; at most once a frame. `nothing` when it leaves. */
  onHover(pick: BenchPick): void;
  /** A click or tap that did not turn the view. */
  onPick(pick: BenchPick, event: { readonly shift: boolean; readonly alt: boolean }): void;
  /** A press on something. @returns true when a drag is to move it instead of turning the view. */
  onGrab(pick: BenchPick): boolean;
  /** What was grabbed is dragged to another place; at most once a frame. */
  onDrag(pick: BenchPick): void;
  /** What was dragged is let go. */
  onDrop(): void;
  /** The plane in hand was dragged: at most once a frame, and once more with `isDone` when it is let go. */
  onPlane(plane: BenchPlane, isDone: boolean): void;
  /** The foam was cut open, or is no longer, or where it is cut has changed. */
  onSection(figures: SectionFigures | null): void;
  /** A picture was drawn. */
  onDrawn(): void;
  /** The picture is gone until the graphics card is back; the job goes on without it. */
  onContextLost(): void;
  onContextRestored(): void;
}

/** Things to point out, in the numbering of the records on show. */
export interface Highlight {
  readonly pieces?: readonly number[];
  readonly seams?: readonly number[];
  /** Parts that no sculpt is parted for, by their ids. */
  readonly parts?: readonly string[];
  /** Edges of the topology. */
  readonly edges?: readonly number[];
  readonly triangles?: readonly number[];
  readonly vertices?: readonly number[];
  /** mm, model space. */
  readonly point?: readonly [number, number, number];
  /** Closed lines through space, packed xyz without a repeated last point, mm, model space. */
  readonly rings?: readonly ArrayLike<number>[];
}

/** Size of what a plane cuts, along its level axis and square to it, mm. */
export interface SectionFigures {
  readonly breadthMm: number;
  readonly heightMm: number;
}

/** One surface looked at by itself: of the foam its face, the one that keeps its length, or its back; or the sculpt. */
export type SurfaceLook = 'face' | 'neutral' | 'back' | 'sculpt';
/** `foam`: the pieces, thick as they are. `prop`: what was cut, put together. */
export type Look = 'foam' | 'prop' | SurfaceLook;

/** A plane through the sculpt that the maker holds, mm, model space. */
export interface BenchPlane {
  /** Any point of it. */
  readonly point: readonly [number, number, number];
  /** Square to it, length 1. */
  readonly normal: readonly [number, number, number];
}

/** Tapes and cores on the bench, each a closed line, packed xyz without a repeated last point, mm, model space. */
export interface BenchTapes {
  readonly chosen: readonly ArrayLike<number>[];
  readonly rest: readonly ArrayLike<number>[];
  /** What the part sits on. */
  readonly cores: readonly ArrayLike<number>[];
}
export const NO_TAPES: BenchTapes = { chosen: [], rest: [], cores: [] };

/** How a place of the sculpt is looked at: to the right and up in the picture, square to the line of sight there; model space, length 1. */
export interface BenchFacing {
  readonly right: readonly [number, number, number];
  readonly up: readonly [number, number, number];
}

export type UpAxis = 'x' | 'y' | 'z';
/** What colours mean: nothing, a figure at each place (stretch, bend, room) or along each seam (pull, fit), which piece it is, paint. */
export type Colouring = 'plain' | 'stretch' | 'bend' | 'room' | 'pull' | 'fit' | 'pieces' | 'paint';
/** True where colours are figures: grounds are pale then, and lines dark. */
export const isMeasure = (colouring: Colouring): boolean => !['plain', 'pieces', 'paint'].includes(colouring);
/** Gap and overlap at the ends of the colours of the dry fit, mm: twice what closes under glue without a trace. */
export const FIT_LIMIT_MM = 2 * DRY_FIT_MM;
/** A thing of known size beside the sculpt. */
export type Familiar = 'none' | 'hand' | 'head' | 'door';
/** `setting`: the sculpt, and before it what its pieces are cut from, as a new sculpt is first seen. */
export type FrameTarget =
  | 'all'
  | 'setting'
  | 'sculpt'
  | 'pieces'
  | { readonly piece: number }
  | { readonly seam: number }
  | { readonly sheet: number };
/** How much of the picture's top and foot panels lie over, px: what is framed lies between. */
export interface BenchInsets {
  readonly topPx: number;
  readonly bottomPx: number;
}

export type LookMove =
  | 'front'
  | 'back'
  | 'left'
  | 'right'
  | 'top'
  | 'bottom'
  | 'turn-left'
  | 'turn-right'
  | 'up'
  | 'down'
  | 'nearer'
  | 'farther'
  /** Slowly round, until anything is done. */
  | 'round'
  /** To where the eye was before it was sent to something. */
  | 'return';

/** Figures of the last picture. */
export interface BenchStats {
  readonly drawCalls: number;
  /** What the last shadows took besides; 0 where none are drawn. */
  readonly shadowCalls: number;
  readonly triangles: number;
  /** Pictures drawn since the scene was made. */
  readonly frames: number;
  /** What the graphics card holds. */
  readonly geometries: number;
  readonly textures: number;
}

/** This browser has no WebGL 2: the job goes on with flat pieces and lists. */
export class NoWebGl extends Error {
  constructor() {
    super('This browser cannot draw the 3D bench (WebGL 2 is missing).');
    this.name = 'NoWebGl';
  }
}
