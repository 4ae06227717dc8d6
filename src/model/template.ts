import type { PieceId } from '../base/ids.ts';
import type { Box2, Ring } from '../geom/ring.ts';
import type { Vec2 } from '../geom/vec.ts';

/**
 * What a line on paper means. Widths and dashes follow the role and are chosen once, in `model/line-style.ts`, for screen, PDF and SVG alike.
 */
export type LineRole =
  | 'cut' // wide solid: cut here
  | 'bevel' // narrow solid: the other edge of a leaning cut
  | 'fold-out' // bends away from the reader (ridge on the printed side)
  | 'fold-in' // bends towards the reader
  | 'groove' // where the walls of a fold's groove come out
  | 'groove-behind' // the same on the side that is not printed
  | 'kerf' // the middle of a cut across a bend, part way through
  | 'kerf-behind' // the same from the side that is not printed
  | 'score' // a slit in the face that opens when warmed
  | 'placement' // where a sheet that is laid on the face ends
  | 'engrave' // a line of artwork that is burned or carved into the face and bounds nothing
  | 'hole' // a round hole at the end of a dart, in its size
  | 'lap' // where a lap's allowance begins
  | 'mark' // match marks, up arrow, grain arrow
  | 'leader' // thin line from a word to its place
  | 'frame' // tile frame, glue strip, lines of lists
  | 'ruler' // scale square and rules, corner crosses, edge ticks
  | 'map'; // small pictures on the map page

/** The layers of a file: a viewer or cutter can show each by itself. `bevel`: the other edge of a leaning cut; `ruler`: all to measure by. */
export type PaperLayer = 'cut' | 'bevel' | 'fold' | 'groove' | 'marks' | 'words' | 'ruler' | 'frame';

/** From the lowest to the highest: what is cut is drawn last, over everything. */
export const PAPER_LAYERS: readonly PaperLayer[] = [
  'words',
  'frame',
  'ruler',
  'marks',
  'groove',
  'fold',
  'bevel',
  'cut',
];

/** A line of straight parts, mm. */
export interface Stroke {
  readonly role: LineRole;
  readonly points: Float64Array;
  readonly closed: boolean;
  /** Filled with the line's colour rather than drawn: arrow heads. */
  readonly filled?: boolean;
}

/** One line of words, mm. `at` is on the baseline at `align`; `angleRad` turns counter-clockwise. */
export interface Words {
  readonly text: string;
  readonly at: Vec2;
  readonly angleRad: number;
  /** Height of a capital letter, mm. */
  readonly heightMm: number;
  readonly align: 'left' | 'centre' | 'right';
  readonly bold?: boolean;
  /** Letters so many times as wide as they are; left out where they are set as they are. Only on pages that are corrected for a printer. */
  readonly wide?: number;
}

export interface Drawing {
  readonly strokes: readonly Stroke[];
  readonly words: readonly Words[];
}

/**
 * What a sheet of foam shows of a piece: its lines, ticks inward, and only such words as lie wholly inside, clear of its own lines. So pieces may lie
 * as near one another as they can, turned anyhow, and no words run into a neighbour.
 */
export interface FoamDrawing extends Drawing {
  /** How many lines of its words belong together, one after the other: a sheet turns those round that would stand on their heads there. */
  readonly blocks: readonly number[];
  /** Its number, where that has no room inside; left out where it has. */
  readonly beside?: string;
}

/** A piece's template as it is laid on foam: drawn as seen from the side it is traced on (reversed for back-traced pieces), mm, y up. */
export interface Template {
  readonly piece: PieceId;
  readonly drawing: Drawing;
  /** Round everything drawn. */
  readonly box: Box2;
  /** Round what is cut from foam: the larger of both edges of every bevel. */
  readonly foamBox: Box2;
  /**
   * The edges of what is cut from foam, on both its sides, outer rings counter-clockwise and holes clockwise: it takes all that is within any outer
   * ring and not within both edges of a hole. Left out where it is `foamBox`.
   */
  readonly foamRings?: readonly Ring[];
  /** How the sheet's length is to lie in the drawing, radians counter-clockwise from +x; left out where the piece may lie anyhow. */
  readonly grainRad?: number;
  /** True when the drawing is the mirror image of the piece seen from its face. */
  readonly reversed: boolean;
  /** What foam shows of it; left out on paper that is not for foam, and where that is `drawing`. */
  readonly onFoam?: FoamDrawing;
  /** The twin that is cut with this template turned over; only on paper, and only where it serves for both. */
  readonly turned?: PieceId;
  /** Of a piece that has a twin: why neither may be cut with the other's template turned over. Left out where they may. */
  readonly apart?: string;
}
