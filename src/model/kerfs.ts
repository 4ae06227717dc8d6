/** Straight cuts side by side into the inside of a bend, part way through, so that a thick sheet rolls tightly. Lengths in mm, in the piece's frame. */
export interface PieceKerfs {
  /** The side they are cut from: the inside of the bend. */
  readonly side: 'face' | 'back';
  /** Wall to wall; the walls stand square to the foam. */
  readonly widthMm: number;
  readonly depthMm: number;
  /** What is left under each. */
  readonly hingeMm: number;
  /** How far each turns, degrees, > 0. */
  readonly turnDeg: number;
  /** What is left open of each at the inside once it has turned; 0 where it shuts. */
  readonly mouthMm: number;
  /** Strain of either side of what is left under each, per cent. */
  readonly hingePct: number;
  /** From `x0 y0` to `x1 y1` each, in the order of the bend; a bend over an opening is cut in several runs. */
  readonly lines: readonly Float64Array[];
  /** From kerf to kerf, middle to middle, where they are nearest and farthest; both 0 for a single one. */
  readonly spacingMm: { readonly least: number; readonly most: number };
}
