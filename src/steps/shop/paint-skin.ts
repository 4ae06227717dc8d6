import type { SeamId } from '../../base/ids.ts';

/** The face of the finished prop as it is painted: triangles of all pieces that are seen, each of one piece and one colour. */
export interface PaintSkin {
  /** Per triangle, mm². */
  readonly areaMm2: Float64Array;
  /** Per triangle the index of its piece. */
  readonly pieceOf: Int32Array;
  /** Per triangle the index of its colour, -1 where it keeps the coats that are put on all over. */
  readonly colourOf: Int32Array;
  /** Three corners of each triangle, x y z, mm. */
  readonly corners: Float64Array;
  /** Edges that two triangles share. */
  readonly edges: readonly SkinEdge[];
}

export interface SkinEdge {
  readonly a: number;
  readonly b: number;
  readonly mm: number;
  /** What is glued there: a seam, or the border of a sheet that is laid on the face; null inside a piece. */
  readonly joint: SeamId | 'laid' | null;
}

/** Area of triangles given by their corners, x y z each, mm². */
export function areasOfCorners(corners: Float64Array): Float64Array {
  return Float64Array.from({ length: corners.length / 9 }, (_, t) => {
    const [ax, ay, az, bx, by, bz, cx, cy, cz] = corners.subarray(9 * t, 9 * t + 9);
    const [ux, uy, uz] = [bx - ax, by - ay, bz - az];
    const [vx, vy, vz] = [cx - ax, cy - ay, cz - az];
    return Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx) / 2;
  });
}

/** Area of some triangles, each as often as its piece is cut, mm². @param quantities per piece. */
export function skinArea(
  { areaMm2, pieceOf }: Pick<PaintSkin, 'areaMm2' | 'pieceOf'>,
  quantities: readonly number[],
  isIn: (triangle: number) => boolean,
): number {
  let sum = 0;
  for (let t = 0; t < areaMm2.length; t += 1) if (isIn(t)) sum += areaMm2[t] * quantities[pieceOf[t]];
  return sum;
}
