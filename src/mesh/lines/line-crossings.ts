import { orient2d } from '../../geom/predicates.ts';
import type { Surface } from '../surface.ts';
import type { MeshLine } from './mesh-line.ts';
import { trianglesAt, weightsIn, type Weights } from './mesh-point.ts';

/** A straight piece of a line within a triangle, by its weights. */
interface PieceInTriangle {
  readonly line: number;
  readonly piece: number;
  readonly from: Weights;
  readonly to: Weights;
}

/**
 * How often lines cross or touch each other or themselves, every two pieces counted once: pieces that have a place in common, other than
 * neighbours at the point they join in, and other than where a line ends on another line.
 */
export function countCrossings(surface: Surface, lines: readonly MeshLine[]): number {
  const inTriangle = new Map<number, PieceInTriangle[]>();
  lines.forEach((line, number) => addPieces(surface, line, number, inTriangle));
  const found = new Set<string>();
  for (const pieces of inTriangle.values()) {
    for (let i = 0; i < pieces.length; i += 1)
      for (let j = i + 1; j < pieces.length; j += 1) {
        const [a, b] = [pieces[i], pieces[j]];
        if (areNeighbours(lines, a, b) ? !overlapBack(a, b) : !meet(lines, a, b)) continue;
        found.add(`${a.line} ${a.piece} ${b.line} ${b.piece}`);
      }
  }
  return found.size;
}

function addPieces(
  surface: Surface,
  { points, closed }: MeshLine,
  line: number,
  into: Map<number, PieceInTriangle[]>,
): void {
  const { topology, triangles } = surface;
  const count = closed ? points.length : points.length - 1;
  for (let piece = 0; piece < count; piece += 1) {
    const [p, q] = [points[piece], points[(piece + 1) % points.length]];
    for (const t of trianglesAt(surface, p)) {
      const [from, to] = [weightsIn(topology, triangles, p, t), weightsIn(topology, triangles, q, t)];
      if (from === null || to === null) continue;
      const list = into.get(t);
      if (list === undefined) into.set(t, [{ line, piece, from, to }]);
      else list.push({ line, piece, from, to });
    }
  }
}

const pieceCount = ({ points, closed }: MeshLine): number => (closed ? points.length : points.length - 1);

function areNeighbours(lines: readonly MeshLine[], a: PieceInTriangle, b: PieceInTriangle): boolean {
  if (a.line !== b.line) return false;
  const gap = Math.abs(a.piece - b.piece);
  return gap === 1 || (lines[a.line].closed && gap === pieceCount(lines[a.line]) - 1);
}

const side = (a: Weights, b: Weights, c: Weights): number => orient2d(a[1], a[2], b[1], b[2], c[1], c[2]);
const isSame = (a: Weights, b: Weights): boolean => a[0] === b[0] && a[1] === b[1] && a[2] === b[2];

/** Two pieces that join in a point and run back over each other. */
function overlapBack(a: PieceInTriangle, b: PieceInTriangle): boolean {
  const joins = isSame(a.to, b.from);
  const [p, m, q] = joins ? [a.from, a.to, b.to] : [b.from, b.to, a.to];
  if (!isSame(joins ? b.from : a.from, m) || side(p, m, q) !== 0) return false;
  return (p[1] - m[1]) * (q[1] - m[1]) + (p[2] - m[2]) * (q[2] - m[2]) > 0;
}

function meet(lines: readonly MeshLine[], a: PieceInTriangle, b: PieceInTriangle): boolean {
  const [fromSide, toSide] = [side(a.from, a.to, b.from), side(a.from, a.to, b.to)];
  const [backFrom, backTo] = [side(b.from, b.to, a.from), side(b.from, b.to, a.to)];
  if (opposite(fromSide, toSide) && opposite(backFrom, backTo)) return true;
  // A point of one on the other: allowed where one of two lines ends there.
  const isEnd = (p: Weights): boolean =>
    a.line !== b.line && [a, b].some((one) => lineEnds(lines, one).some((end) => isSame(end, p)));
  const touches = (s: number, p: Weights, on: PieceInTriangle): boolean => s === 0 && isWithin(p, on) && !isEnd(p);
  return (
    touches(fromSide, b.from, a) || touches(toSide, b.to, a) || touches(backFrom, a.from, b) || touches(backTo, a.to, b)
  );
}

const opposite = (s: number, t: number): boolean => (s < 0 && t > 0) || (s > 0 && t < 0);

const isWithin = (p: Weights, { from, to }: PieceInTriangle): boolean =>
  [0, 1, 2].every((k) => p[k] >= Math.min(from[k], to[k]) && p[k] <= Math.max(from[k], to[k]));

/** The ends of a piece that are ends of its line. */
function lineEnds(lines: readonly MeshLine[], { line, piece, from, to }: PieceInTriangle): Weights[] {
  if (lines[line].closed) return [];
  return [...(piece === 0 ? [from] : []), ...(piece === pieceCount(lines[line]) - 1 ? [to] : [])];
}
