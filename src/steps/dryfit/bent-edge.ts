import { add3, cross3, dot3, length3, pointAt3, scale3, sub3, unit3, type Vec3 } from '../../geom/vec.ts';
import { borderKey, borderTips } from './border-tips.ts';
import { edgeCount, seamVertex, type FitSide } from './fit-side.ts';

/** One edge of a seam in space as one of its sides holds it. */
export interface BentEdge {
  /** Ends on the neutral surface in the seam's direction, mm. */
  readonly start: Vec3;
  readonly end: Vec3;
  readonly lengthMm: number;
  /** Along the seam, length 1. */
  readonly along: Vec3;
  /** The side's outward normal at the start, in the middle and at the end, length 1. */
  readonly normals: readonly [Vec3, Vec3, Vec3];
  /** 1 where outward lies to the right of the seam seen from the face (side 0), -1 to the left (side 1). */
  readonly turn: 1 | -1;
}

/** A seam that turns by less than this at a vertex is a smooth line there: cosine of 45 degrees. */
const SMOOTH_LINE_COSINE = Math.SQRT1_2;

/**
 * How both sides of a seam stand along it: the facets beside the seam, leaned where a side is smooth. Along a smooth stretch, where neither
 * side has a crease, normals run straight from the middle of one edge to the middle of the next, as bevels do; at a corner they jump.
 */
export function bentEdges(sides: readonly [FitSide, FitSide]): readonly [readonly BentEdge[], readonly BentEdge[]] {
  const count = edgeCount(sides[0]);
  const middles = sides.map((side) => Array.from({ length: count }, (_, i) => middleOf(side, i)));
  const isClosed = sides.every((side) => side.edge.from === side.edge.to);
  const isSmoothJoin = (i: number, j: number): boolean =>
    dot3(middles[0][i].along, middles[0][j].along) > SMOOTH_LINE_COSINE &&
    sides.every(({ panelBeside }) => panelBeside[i] === panelBeside[j]);
  const neighbour = (i: number, step: 1 | -1): number => {
    const j = isClosed ? (i + step + count) % count : i + step;
    return j >= 0 && j < count && j !== i && isSmoothJoin(i, j) ? j : -1;
  };
  const [a, b] = middles.map((list) =>
    list.map((middle, i) => withEnds(list, middle, neighbour(i, -1), neighbour(i, 1))),
  );
  return [a, b];
}

interface MiddleOfEdge extends Omit<BentEdge, 'normals'> {
  readonly normal: Vec3;
}

function middleOf(side: FitSide, i: number): MiddleOfEdge {
  const { patch, neutralPositions, tiltRad } = side;
  const at = (v: number): Vec3 => pointAt3(neutralPositions, patch.meshVertices[v]);
  const [v, w] = [seamVertex(side, i, 0), seamVertex(side, i, 1)];
  const { hingedEnds } = side;
  const [start, end] =
    hingedEnds === null ? [at(v), at(w)] : [pointAt3(hingedEnds, 3 * i), pointAt3(hingedEnds, 3 * i + 1)];
  const along = unit3(sub3(end, start));
  const turn = side.edge.reversed ? -1 : 1;
  const tip = borderTips(patch).get(turn === 1 ? borderKey(patch, v, w) : borderKey(patch, w, v));
  if (tip === undefined) throw new Error(`middleOf: seam ${side.edge.seam} leaves the border of its patch`);
  const inward = hingedEnds === null ? sub3(at(tip), at(v)) : sub3(pointAt3(hingedEnds, 3 * i + 2), start);
  const facet = unit3(scale3(cross3(along, inward), turn));
  const outward = scale3(cross3(along, facet), turn);
  const tilt = tiltRad?.[i] ?? 0;
  const normal = sub3(scale3(facet, Math.cos(tilt)), scale3(outward, Math.sin(tilt)));
  return { start, end, lengthMm: length3(sub3(end, start)), along, normal, turn };
}

function withEnds(
  list: readonly MiddleOfEdge[],
  { normal, ...edge }: MiddleOfEdge,
  before: number,
  after: number,
): BentEdge {
  // At the end of a smooth stretch the normal goes on as it came.
  const towards = (near: number, far: number): Vec3 => {
    const other = near >= 0 ? near : far;
    if (other < 0) return normal;
    const share = edge.lengthMm / (edge.lengthMm + list[other].lengthMm);
    const step = scale3(sub3(list[other].normal, normal), near >= 0 ? share : -share);
    return unit3(add3(normal, step));
  };
  return { ...edge, normals: [towards(before, after), normal, towards(after, before)] };
}

/** The normal at share `f` of an edge; before its start and after its end that of the end. */
export function normalAlong({ normals }: BentEdge, f: number): Vec3 {
  const place = 2 * Math.min(1, Math.max(0, f));
  const [from, to, share] = place <= 1 ? [normals[0], normals[1], place] : [normals[1], normals[2], place - 1];
  return unit3(add3(scale3(from, 1 - share), scale3(to, share)));
}

/** Outward from the piece in its surface, square to the seam, length 1. */
export const outwardAt = ({ along, turn }: BentEdge, normal: Vec3): Vec3 => unit3(scale3(cross3(along, normal), turn));
