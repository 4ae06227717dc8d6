import type { EdgeOffsets } from '../geom/offset-ring.ts';

/**
 * How a seam is built whose fold is too sharp for the blade. `split`: the fold is shared out over more seams, with strips of the same foam
 * between the pieces. `fill`: both edges are cut as steep as the blade leans, glued where they touch, and the gap is filled. `trim`: the same,
 * with a thin strip laid over the gap.
 */
export type SteepWay = 'split' | 'fill' | 'trim';

/** Least and greatest along a seam, mm. */
export interface LengthRange {
  readonly min: number;
  readonly max: number;
}

/** What is left between the two cut edges on purpose, in both pieces' own surfaces together, mm, at both ends of each edge of the seam. */
export interface LeftRoom {
  readonly face: EdgeOffsets;
  readonly back: EdgeOffsets;
}

/** What the chosen way comes to at a seam. Lengths mm. */
export type SteepJoin = { readonly room: LeftRoom } & SteepFigures;

export type SteepFigures =
  | {
      readonly way: 'split';
      /** Strips between the two pieces, at least 1. */
      readonly strips: number;
      /** Steepest lean of their edges and of the pieces', degrees from square. */
      readonly bevelDeg: number;
      /** Width of each, on the face and on the back. */
      readonly faceMm: LengthRange;
      readonly backMm: LengthRange;
    }
  | {
      readonly way: 'fill' | 'trim';
      /** Widest place of the gap at its mouth, and the side of the foam it is open on. */
      readonly gapMm: number;
      readonly openOn: 'face' | 'back';
      /** Width of the trim strip; for `trim` alone. */
      readonly trimMm?: number;
    };
