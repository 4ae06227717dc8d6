import type { Vec2 } from '../geom/vec.ts';
import type { PictureLight } from './bitmap.ts';
import type { KnownPlace } from './picture-trace.ts';

/** What is made of a stroke: the line itself, or the outline of what it covers. */
export type StrokeReading = 'centre' | 'outline';

/** How the true size is told: nothing, the width of the whole, or a length between two points or two shapes of the drawing. */
export type ArtworkSize =
  | { readonly by: 'file' }
  | { readonly by: 'width'; readonly mm: number }
  /** Points in numbers of the drawing, y down as it counts. */
  | { readonly by: 'points'; readonly a: Vec2; readonly b: Vec2; readonly mm: number }
  /** Between the middles of two shapes or pieces, by their names. */
  | { readonly by: 'names'; readonly a: string; readonly b: string; readonly mm: number };

/** What is asked of an SVG file; lengths in mm. */
export interface ArtworkChoice {
  readonly size: ArtworkSize;
  readonly deviationMm: number;
  readonly closeMm: number;
  readonly regulariseMm: number;
  /** How far a closed line may move to become exactly symmetric; left out, 0. */
  readonly symmetricMm?: number;
  readonly strokes: StrokeReading;
}

/** How the true size of a picture is told. Places are px from its upper left corner, y down; lengths mm. */
export type PictureSize =
  /** By the density that the file names. */
  | { readonly by: 'file' }
  | { readonly by: 'dpi'; readonly dpi: number }
  /** Of all lines that are traced. */
  | { readonly by: 'width' | 'height'; readonly mm: number }
  | { readonly by: 'points'; readonly a: Vec2; readonly b: Vec2; readonly mm: number }
  /** A photograph of something flat, set straight by places on it. */
  | { readonly by: 'photo'; readonly places: readonly KnownPlace[] };

/** What is asked of a picture. Lengths in mm, places in px from the upper left corner, y down. */
export interface PictureChoice {
  readonly size: PictureSize;
  /** Grey that parts dark from light, as programs show it, 0 black to 100 white; null to find it. */
  readonly thresholdPct: number | null;
  /** Shapes are light on dark. */
  readonly isInverted: boolean;
  /** Width of the bell the picture is seen through, px; 0 for none. */
  readonly smoothPx: number;
  /** Spots and pinholes smaller than this are left out, mm². */
  readonly specksMm2: number;
  /** Greatest distance of curves from the picture's line; null for the usual one. */
  readonly traceMm: number | null;
  /** What is traced: corners of a figure, or two of a box; null for all. */
  readonly crop: readonly Vec2[] | null;
  /** How greys add up; null for light where it is a photograph set straight, else as drawn. */
  readonly light: PictureLight | null;
  /** Known lengths that the result is held against. */
  readonly checks: readonly { readonly a: Vec2; readonly b: Vec2; readonly mm: number }[];
  /** Of straight parts from curves, as for a drawing. */
  readonly deviationMm: number;
  readonly regulariseMm: number;
  readonly symmetricMm?: number;
}
