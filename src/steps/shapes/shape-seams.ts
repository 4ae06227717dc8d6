import { letters } from '../../base/ids.ts';
import type { Shape, ShapeEdge, ShapePiece, ShapeSeam } from '../../model/shape.ts';

/** A seam of a shape with what its gluing needs. */
export interface WorkedSeam {
  readonly seam: ShapeSeam;
  /** A, B, C … in the order of the seams. */
  readonly letter: string;
  /** A piece closes on itself, or two pieces are joined. */
  readonly isClosing: boolean;
  /** How often it comes, all copies counted. */
  readonly count: number;
  /** Width of a cut over the thickness, at least 1: the mean of 1 / cos(bevel) along it. */
  readonly widening: number;
}

/** Lengths of edges that differ by less than this share are one. */
const ALIKE_SHARE = 1e-6;

/** Places nearer than this share of the shape's size are one. */
const SAME_PLACE_SHARE = 1e-6;

export const workedSeams = (shape: Shape): readonly WorkedSeam[] =>
  shape.seams.map((seam, i) => {
    const edges = edgesOf(shape, seam);
    const all = edges.reduce((sum, { piece, own }) => sum + own.length * piece.quantity, 0);
    const isClosing = closesOnItself(shape, seam);
    // A row that does not go round has one joint fewer than ends to join.
    const open = isOpenRow(shape) ? 1 : 0;
    return {
      seam,
      letter: letters(i),
      isClosing,
      count: Math.max(1, Math.round(all / 2) - open),
      widening: wideningOf(edges[0]?.own[0]),
    };
  });

/** Edges of each piece that belong to a seam. */
export function edgesOf(
  { pieces }: Pick<Shape, 'pieces'>,
  seam: ShapeSeam,
): readonly { readonly piece: ShapePiece; readonly own: readonly ShapeEdge[] }[] {
  const [first, second] = seam.pieces;
  const isOf = (piece: ShapePiece, edge: ShapeEdge): boolean => {
    if (edge.seam !== undefined) return edge.seam === seam.name;
    if (edge.meets === undefined) return false;
    const other = piece.name === first ? second : piece.name === second ? first : null;
    const isAlike = seam.lengthMm.some((one) => Math.abs(one - edge.lengthMm) <= ALIKE_SHARE * one);
    return other !== null && edge.meets === other && seam.name === `${first} to ${second}` && isAlike;
  };
  return pieces.flatMap((piece) => {
    const own = [piece.outline, ...piece.holes].flat().filter((edge) => isOf(piece, edge));
    return own.length === 0 ? [] : [{ piece, own }];
  });
}

const isOpenRow = ({ name, sizes }: Shape): boolean => name === 'ring' && sizes.angle_deg !== 360;

/** Whether both edges are of one and the same copy: the only one, or one whose ends come together in space. */
function closesOnItself({ pieces, patches }: Shape, { pieces: [a, b], edges, name }: ShapeSeam): boolean {
  const piece = pieces.find((one) => one.name === a);
  if (a !== b || piece === undefined || edges[0] === edges[1]) return false;
  const isNamed = piece.outline.some(({ seam }) => seam === name);
  if (!isNamed) return false;
  if (piece.quantity === 1) return true;
  const solid = patches.find((one) => one.piece === a)?.solid;
  if (solid === undefined || !edges.includes('start') || !edges.includes('end')) return false;
  const [p, q, r] = [solid(0, 0.4), solid(1, 0.4), solid(0.5, 0.4)];
  const size = Math.hypot(r.x - p.x, r.y - p.y, r.z - p.z);
  return Math.hypot(q.x - p.x, q.y - p.y, q.z - p.z) <= SAME_PLACE_SHARE * size;
}

/** Mean of 1 / cos(bevel) along an edge whose bevel changes evenly from its start to half-way and on to its end, by Simpson's rule over both halves. */
export function wideningOf(edge: ShapeEdge | undefined): number {
  if (edge === undefined) return 1;
  const { from, middle, to } = edge.bevelDeg;
  const wide = (bevel: number): number => 1 / Math.cos((bevel * Math.PI) / 180);
  return (wide(from) + 4 * wide((from + middle) / 2) + 2 * wide(middle) + 4 * wide((middle + to) / 2) + wide(to)) / 12;
}
