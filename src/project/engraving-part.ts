import type { PartId } from '../base/ids.ts';
import type { SurfacePoint } from '../model/seams.ts';
import type { Drawing } from './artwork-part.ts';

/** Artwork drawn on the face of a sculpt; it cuts no foam. */
export interface EngravingFields {
  readonly kind: 'engraving';
  /** The sculpt it lies on. */
  readonly on: PartId;
  /** How its file is read, and its size. */
  readonly drawing: Drawing;
  readonly at: EngravingPlace;
  /** Where the drawing's up points to there, along the axes of the sculpt's file, any length but 0. Missing: where the file's up does. */
  readonly up?: readonly [number, number, number];
  /** surface: true to size on the face of the finished prop, about its place. piece: true to size on the flat piece it sits on, and drawn on that alone. */
  readonly trueOn: 'surface' | 'piece';
}

/**
 * Where the middle of the drawing lies. point: of the sculpt, in file numbers, so that it stays when the sculpt changes its size. nearest: of the sculpt the
 * point nearest to one in its own frame, mm.
 */
export type EngravingPlace =
  | { readonly by: 'point'; readonly point: SurfacePoint }
  | { readonly by: 'nearest'; readonly mm: readonly [number, number, number] };
