import type { FoamId, PieceId } from '../base/ids.ts';
import type { Region } from '../geom/polygon-boolean.ts';
import type { Vec2 } from '../geom/vec.ts';
import type { Drawing, Words } from './template.ts';

/** What goes through the foam. blade: a drawn or shaking knife, which takes nothing away. unknown: nobody has said. */
export type CutterKind = 'blade' | 'laser' | 'unknown';

/**
 * Width of the cut, mm, where nobody has measured it. A knife pushes foam aside and takes none away; laser services give about 0.2 mm, "a few
 * tenths", half to each side: cut a square of 100 mm and measure what is missing.
 */
export const USUAL_CUT_WIDTH_MM: Readonly<Record<CutterKind, number>> = { blade: 0, laser: 0.2, unknown: 0 };

/** Widest cut that can be made up for, mm: wider than any saw blade, under the width of a narrow piece. */
export const MOST_CUT_WIDTH_MM = 10;

/** Most bridges round a piece, and the widest, mm. */
export const MOST_BRIDGES = 100;
export const MOST_BRIDGE_MM = 50;

/** Places where a piece stays joined to its sheet, so that it does not fall or lift while the rest is cut. */
export interface Bridges {
  /** How many on the outline of each piece, whole, 1 or more. */
  readonly count: number;
  /** Foam that is left standing at each, mm, > 0. */
  readonly widthMm: number;
}

/** How sheets are cut by machine. */
export interface CutterChoice {
  readonly kind: CutterKind;
  /** What the cut takes away, mm, 0 to {@link MOST_CUT_WIDTH_MM}: lines run half of it outside outlines and inside holes. */
  readonly cutWidthMm: number;
  readonly bridges?: Bridges;
}

/** What was said of it in a project. */
export interface CutterWish {
  /** Missing: nobody has said. */
  readonly kind?: Exclude<CutterKind, 'unknown'>;
  /** Missing: as is usual for it, {@link USUAL_CUT_WIDTH_MM}. */
  readonly cutWidthMm?: number;
  /** Missing: none. */
  readonly bridges?: Bridges;
}

/**
 * What a line means at the machine. Only the first four go through the foam. They are cut upright; where an edge leans that is not yet the
 * finished edge, and `knife` shows where it comes to lie.
 */
export type CutterRole =
  | 'hole' // through: a round hole at the end of a dart
  | 'inside' // through: an opening in a piece
  | 'slit' // through: a dart too narrow for two lines
  | 'outside' // through: round a piece
  | 'knife' // an edge that is still to be leaned by hand, on face or back
  | 'kerf' // part way, from the side that lies up
  | 'score' // a slit in the face
  | 'engrave' // a line of artwork in the face, hardly deep
  | 'behind' // belongs on the side that lies down: to be turned over for
  | 'fold'
  | 'groove'
  | 'placement'
  | 'lap'
  | 'mark'
  | 'grain'
  | 'words'; // leaders and other lines that belong to words

export const THROUGH_ROLES: readonly CutterRole[] = ['hole', 'inside', 'slit', 'outside'];

/** A line of straight parts on a sheet, mm. */
export interface CutterLine {
  readonly role: CutterRole;
  readonly points: Float64Array;
  readonly closed: boolean;
  /** Where it is a circle and nothing of it is left out; then `points` lie on it. */
  readonly circle?: { readonly centre: Vec2; readonly radiusMm: number };
}

/** One piece where it lies on its sheet. */
export interface CutterPiece {
  readonly piece: PieceId;
  readonly number: number;
  readonly name: string;
  /** 0 for the first copy. */
  readonly copy: number;
  /** In the order they are to be worked: drawn, then cut part way, then through, inside before outside and small before large. */
  readonly lines: readonly CutterLine[];
  readonly words: readonly Words[];
  /** What is cut out, by the middle of the cut, as if by itself: without bridges, and with lines that a neighbour has too. */
  readonly shape: readonly Region[];
  /** All that foam shows of it, where it lies. */
  readonly drawing: Drawing;
}

/** One sheet as a machine takes it: origin lower left, y up, mm. Pieces in the order they are to be cut. */
export interface CutterSheet {
  /** 1, 2, 3 … as the sheets of foam are counted; pieces too large for any sheet come after, on ground of their own size. */
  readonly number: number;
  readonly foam: FoamId;
  readonly thicknessMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  /** True for ground of its own size, which no sheet in stock has. */
  readonly isTooLarge: boolean;
  readonly pieces: readonly CutterPiece[];
  /** Words right of the sheet about pieces whose number has room neither inside nor beside them; mostly none. */
  readonly list: readonly Words[];
  /** How far those reach beyond the sheet, mm; 0 where there are none. */
  readonly listMm: number;
}
