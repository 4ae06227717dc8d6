/**
 * A V cut part way through the foam along a fold, so that it closes when the fold is bent (foam model 2). Its walls meet under the fold line.
 *
 *      ___________     ___________   surface it is cut from
 *                 \   /                widthMm, at the surface
 *                  \ /                 depthMm
 *      ___________________________   hingeMm is left
 */
export interface FoldGroove {
  /** Angle between its walls: the size of the fold, degrees. */
  readonly includedDeg: number;
  readonly widthMm: number;
  readonly depthMm: number;
  readonly hingeMm: number;
  /** The surface it is cut from: the inside of the bend, so the back for a convex fold and the face for a concave one. */
  readonly side: 'face' | 'back';
}
