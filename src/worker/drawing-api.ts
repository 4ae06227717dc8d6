import type { Result } from '../base/result.ts';
import type { FlatDrawing } from '../geom/svg-drawing.ts';
import type { Stroke } from '../geom/svg-path.ts';
import type { SurfacePoint } from '../model/seams.ts';

export type { FlatDrawing };

/** A picked place: a corner of the sculpt on show, or a place in one of its triangles, mm, which may be meant to lie on an edge. */
export type Spot =
  | { readonly corner: number }
  | { readonly triangle: number; readonly point: readonly [number, number, number]; readonly edge?: number };

/** What is drawn across faces. */
export type AcrossWish =
  /** From place to place, each stretch as short as it can be. */
  | { readonly by: 'straight'; readonly spots: readonly Spot[] }
  /** One smooth curve through all places; closed where the last is the first. */
  | { readonly by: 'curve'; readonly spots: readonly Spot[] }
  /** Where a plane cuts the sculpt, mm; with a spacing also where planes at equal distances from it do. */
  | {
      readonly by: 'plane';
      readonly point: readonly [number, number, number];
      readonly normal: readonly [number, number, number];
      readonly spacingMm?: number;
    }
  /** A line of corners of the sculpt on show, pulled taut within a distance of where it runs. */
  | { readonly by: 'taut'; readonly corners: readonly number[]; readonly withinMm: number };

/** A line across faces, as the document keeps it and as it is drawn. */
export interface AcrossLine {
  /** A closed line ends with the point it begins with. */
  readonly points: readonly SurfacePoint[];
  /** The same in space, x y z, mm. */
  readonly xyz: Float32Array;
  readonly lengthMm: number;
  /** Of a line pulled taut: how far it strays from where it ran, mm. */
  readonly farthestMm?: number;
}

type Triple = readonly [number, number, number];

/** A drawing to be laid on the sculpt, and how. */
export interface LayWish {
  /** mm, y up, about the drawing's middle, which comes to lie on the place. */
  readonly strokes: readonly Stroke[];
  /** How many times as large as it is drawn, how far turned, counter-clockwise, and then moved in its own plane, mm. */
  readonly size: number;
  readonly turnRad: number;
  readonly shiftMm: readonly [number, number];
  readonly spot: Spot;
  readonly way:
    /** Along parallel lines of sight, onto what they meet first: `right` and `up` have length 1 and are square to each other. */
    | { readonly by: 'seen'; readonly right: Triple; readonly up: Triple }
    /** Round the surface from the place. The drawing's up goes the first of these ways that does not stand nearly square to the surface there. */
    | { readonly by: 'round'; readonly ups: readonly Triple[] };
}

/** A drawing as it lies on the sculpt. */
export interface LaidDrawing {
  readonly lines: readonly AcrossLine[];
  /** Share of its length that lies on nothing. */
  readonly missedShare: number;
  /** The longest piece by which an outline laid round had to be closed, mm; 0 where none gaped. */
  readonly closedByMm: number;
}

/** A line of the document that is dragged over the sculpt. */
export interface MoveWish {
  /** The line as it was when it was taken hold of. */
  readonly points: readonly SurfacePoint[];
  /** Where it was taken hold of, and where that is to lie: the nearest place of the sculpt is meant. mm. */
  readonly from: Triple;
  readonly to: Triple;
  /** And from there on along the surface: the way that leads, and as far, mm. */
  readonly push?: Triple;
}

/** The line where it was dragged to, and where on it the hand is, mm. */
export interface MovedLine extends AcrossLine {
  readonly at: Triple;
}

/** Lines across faces, drawn on the sculpt of the last compute. */
export interface Drawing {
  /**
   * @param isMirrored true to draw each line on the other side of the mirror too, where its faces have their like there.
   * @returns fails with `seams/no-path`, `seams/too-many-planes` or `seams/missed`.
   */
  drawAcross(wish: AcrossWish, isMirrored?: boolean): Promise<Result<readonly AcrossLine[]>>;
  /** @returns fails with `seams/no-path` or as the line itself is refused. */
  moveLine(wish: MoveWish): Promise<Result<MovedLine>>;
  /** The strokes of an SVG file, as `readSvgDrawing` reads them. */
  readDrawing(text: string): Promise<Result<FlatDrawing>>;
  /** @returns fails with `drawing/missed` or `seams/no-sculpt`. */
  layDrawing(wish: LayWish, isMirrored?: boolean): Promise<Result<LaidDrawing>>;
}
