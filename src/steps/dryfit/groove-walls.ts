import { rad } from '../../geom/vec.ts';
import type { PieceFold } from '../../model/foam-piece.ts';
import type { CutEdge, Skin } from './cut-edge.ts';
import { neutralRing, ringPoint, type FitSide } from './fit-side.ts';

/** A fold ends on a point of the outline when it comes this near, mm: both are the same vertex, written twice. */
const SAME_POINT_MM = 1e-6;

/** A fold that leaves the edge at less than this ends no cut beside it, sine of about 12 degrees. */
const LEAST_SINE = 0.2;

/** The line a panel ends on at a fold, seen along an edge: points `(S, O)` with `s S + o O = at`. */
interface Wall {
  readonly s: number;
  readonly o: number;
  readonly at: number;
}

/**
 * Ends the cut beside an edge at the folds of its piece. Folded, a panel ends on the plane that halves the fold: what lies under the hinge was
 * cut away with the groove or is squeezed there, what lies over it is stretched round. Seen flat, at height `z` over the hinge, that plane is
 * `z tan(fold / 2)` beyond the fold line. A piece without grooves, and an end where no fold meets the edge, stay as they are.
 * @param i  edge of the seam.
 */
export function endedAtFolds(side: FitSide, skin: Skin, i: number, cut: CutEdge): CutEdge {
  if (side.piece.bendStyle !== 'grooved') return cut;
  const ring = neutralRing(side);
  const [p, q] = [2 * ringPoint(side, i, 0), 2 * ringPoint(side, i, 1)];
  const lengthMm = Math.hypot(ring[q] - ring[p], ring[q + 1] - ring[p + 1]);
  if (lengthMm === 0) return cut;
  const [ex, ey] = [(ring[q] - ring[p]) / lengthMm, (ring[q + 1] - ring[p + 1]) / lengthMm];
  const turn = side.edge.reversed ? -1 : 1;
  const seen = (x: number, y: number): readonly [number, number] => [ex * x + ey * y, turn * (ey * x - ex * y)];
  const from = [cut.f0 * lengthMm, cut.o0] as const;
  const way = [cut.f1 * lengthMm - from[0], cut.o1 - cut.o0] as const;
  /** Share of the cut at which it meets the wall at one end, or what it is there without one. */
  const shareAt = (at: number, cornerS: number, ahead: 1 | -1, without: number): number => {
    const wall = wallAt(side, skin, [ring[at], ring[at + 1]], ahead, seen);
    const steep = wall === null ? 0 : wall.s * way[0] + wall.o * way[1];
    if (wall === null || !(Math.abs(steep) > LEAST_SINE * Math.hypot(...way))) return without;
    return (wall.at - wall.s * (from[0] - cornerS) - wall.o * from[1]) / steep;
  };
  const [a, b] = [shareAt(p, 0, 1, 0), shareAt(q, lengthMm, -1, 1)];
  if (!(b > a)) return cut;
  const f = (share: number): number => (from[0] + share * way[0]) / lengthMm;
  return { f0: f(a), o0: from[1] + a * way[1], f1: f(b), o1: from[1] + b * way[1] };
}

/**
 * The wall at one end of an edge, counted from that end.
 * @param ahead  1 at the edge's start, -1 at its end: the way along the edge from there.
 * @param seen   turns a way on the piece to along and outward of the edge.
 */
function wallAt(
  { piece, neutralFraction: k }: FitSide,
  skin: Skin,
  [x, y]: readonly [number, number],
  ahead: 1 | -1,
  seen: (x: number, y: number) => readonly [number, number],
): Wall | null {
  let [least, wall]: [number, Wall | null] = [Infinity, null];
  for (const fold of piece.folds) {
    const isFrom = Math.hypot(fold.from.x - x, fold.from.y - y) < SAME_POINT_MM;
    if (!isFrom && Math.hypot(fold.to.x - x, fold.to.y - y) >= SAME_POINT_MM) continue;
    const far = isFrom ? fold.to : fold.from;
    const [s, o] = seen(far.x - x, far.y - y);
    // Of several folds that meet here the first one inward of the edge ends its panel.
    const inward = (Math.atan2(-o, ahead * s) + 2 * Math.PI) % (2 * Math.PI);
    if (inward >= least) continue;
    least = inward;
    const length = Math.hypot(s, o);
    const height = (skin === 'face' ? 1 - k : -k) * piece.thicknessMm - hingeHeight(fold, k, piece.thicknessMm);
    const at = height * Math.tan(rad(fold.angleDeg) / 2);
    wall = { s: (ahead * o) / length, o: (-ahead * s) / length, at };
  }
  return wall;
}

/** How far over the surface the piece was laid flat from a fold turns, mm. */
function hingeHeight({ groove }: PieceFold, k: number, thicknessMm: number): number {
  if (groove === undefined) return 0;
  const fromBack = groove.side === 'back' ? thicknessMm - groove.hingeMm / 2 : groove.hingeMm / 2;
  return fromBack - k * thicknessMm;
}
