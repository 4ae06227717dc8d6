import { chainLength, chainPoints } from '../../geom/outline.ts';
import type { Vec2 } from '../../geom/vec.ts';
import type { PlainLine } from '../../model/plain-piece.ts';
import type { Shape, ShapeEdge, ShapePatch, ShapePiece } from '../../model/shape.ts';
import { edgesOf, type WorkedSeam } from './shape-seams.ts';

/** Length of a tick inward from an edge, mm, and half of a cross inside. */
const TICK_MM = 5;
const CROSS_MM = 3;
/** Match marks stand no farther apart than this along a seam, mm. */
const MARKS_APART_MM = 80;
/** Most marks on one edge. */
const MOST_MARKS = 60;
/** Marks are moved from even places by this share of their distance, so that a piece cannot be turned end for end. */
const UNEVEN = 0.2;
/** A mark nearer to the outline than this stands on it, mm. */
const ON_EDGE_MM = 0.05;
/** A line whose middle is off its chord by more than this share of it is not straight. */
const STRAIGHT_SHARE = 1e-9;
/** Lines along which a bend runs are drawn at these shares of a piece. */
const BEND_SHARES = [0.25, 0.5, 0.75];

/** Folds, lines along which bends run, match marks and other marks of a piece. */
export const linesOfPiece = (shape: Shape, piece: ShapePiece, seams: readonly WorkedSeam[]): readonly PlainLine[] => [
  ...foldLines(shape, piece),
  ...bendLines(shape, piece),
  ...piece.marks.flatMap(({ name, at }) => markLines(piece, name, at)),
  ...seamMarks(shape, piece, seams),
];

const straight = (role: PlainLine['role'], from: Vec2, to: Vec2, text?: string): PlainLine => ({
  role,
  points: Float64Array.of(from.x, from.y, to.x, to.y),
  closed: false,
  ...(text === undefined ? {} : { text }),
});

function foldLines({ name }: Shape, { folds }: ShapePiece): readonly PlainLine[] {
  return folds.map(({ from, to, angleDeg }, i) => {
    if (angleDeg !== 0)
      return straight(
        angleDeg > 0 ? 'fold-out' : 'fold-in',
        from,
        to,
        i === 0 ? (angleDeg > 0 ? 'fold out' : 'fold in') : undefined,
      );
    const [role, text] = LINES_OF[name] ?? (['mark', 'the bend runs along these lines'] as const);
    return straight(role, from, to, i === 0 ? text : undefined);
  });
}

/** What lines without a turn mean where they are not those of a bend. */
const LINES_OF: Readonly<Record<string, readonly [PlainLine['role'], string]>> = {
  wrap: ['lap', 'the other end lies up to here'],
  helical_strip: ['lap', 'the next turn lies up to here'],
  seam_allowance: ['lap', 'finished edge'],
  bend: ['mark', 'the bend begins and ends here'],
};

function bendLines({ patches }: Shape, piece: ShapePiece): readonly PlainLine[] {
  if (piece.bend.kind !== 'rolled' || piece.folds.length > 0) return [];
  const patch = patches.find((one) => one.piece === piece.name && one.flat !== undefined);
  if (patch?.flat === undefined) return [];
  const isAcross = isStraightAlongU(patch);
  // A strip on its way round has its own lines neither along nor across.
  if (BEND_SHARES.some((share) => !isStraight(patch, share, isAcross))) return [];
  return BEND_SHARES.map((share, i) => {
    const [from, to] = isAcross
      ? [patch.flat?.(0, share), patch.flat?.(1, share)]
      : [patch.flat?.(share, 0), patch.flat?.(share, 1)];
    if (from === undefined || to === undefined) throw new Error(`${piece.name} has no place in the flat`);
    return straight('mark', from, to, i === 1 ? 'the bend runs along these lines' : undefined);
  });
}

/** Facets tell it: a patch needs none along its straight lines. */
const isStraightAlongU = ({ facets = [1, 0] }: ShapePatch): boolean => facets[0] === 0;

/** Whether a line of a patch is straight in space, by its middle. */
function isStraight({ solid }: ShapePatch, share: number, isAcross: boolean): boolean {
  const [p, q, r] = [0, 0.5, 1].map((x) => (isAcross ? solid(x, share) : solid(share, x)));
  const away = Math.hypot(p.x + r.x - 2 * q.x, p.y + r.y - 2 * q.y, p.z + r.z - 2 * q.z) / 2;
  return away <= STRAIGHT_SHARE * Math.hypot(r.x - p.x, r.y - p.y, r.z - p.z);
}

/** A tick inward where it stands on the outline, else a cross. */
function markLines({ outline }: ShapePiece, name: string, at: Vec2): readonly PlainLine[] {
  const inward = inwardAt(outline, at);
  if (inward !== null)
    return [straight('mark', at, { x: at.x + TICK_MM * inward.x, y: at.y + TICK_MM * inward.y }, name)];
  return [
    straight('mark', { x: at.x - CROSS_MM, y: at.y }, { x: at.x + CROSS_MM, y: at.y }, name),
    straight('mark', { x: at.x, y: at.y - CROSS_MM }, { x: at.x, y: at.y + CROSS_MM }),
  ];
}

/** The direction inward from an outline at a place on it; null away from it. */
function inwardAt(outline: readonly ShapeEdge[], at: Vec2): Vec2 | null {
  const points = chainPoints(outline.flatMap(({ segments }) => segments));
  let [least, inward]: [number, Vec2 | null] = [ON_EDGE_MM, null];
  for (let i = 1; i < points.length; i += 1) {
    const [p, q] = [points[i - 1], points[i]];
    const [dx, dy] = [q.x - p.x, q.y - p.y];
    const long = Math.hypot(dx, dy);
    if (long === 0) continue;
    const share = Math.min(1, Math.max(0, ((at.x - p.x) * dx + (at.y - p.y) * dy) / (long * long)));
    const away = Math.hypot(at.x - p.x - share * dx, at.y - p.y - share * dy);
    if (away < least) [least, inward] = [away, { x: -dy / long, y: dx / long }];
  }
  return inward;
}

/** Ticks inward along the edges of seams, with the seam's letter; both sides of a seam have them at the same places. */
function seamMarks(shape: Shape, piece: ShapePiece, seams: readonly WorkedSeam[]): readonly PlainLine[] {
  return seams.flatMap((one) => {
    const sides = edgesOf(shape, one.seam);
    const own = sides.find((side) => side.piece === piece)?.own ?? [];
    const firstSide = sides[0].own[0];
    const isPair = sides.reduce((sum, side) => sum + side.own.length, 0) === 2;
    return own.flatMap((edge) => {
      // A panel that meets its like may stand either way round: one mark half-way serves every one of its sides.
      const shares = edge.seam === undefined ? [0.5] : matchShares(one.seam.lengthMm[0], isPair);
      // The other side of a seam runs the other way.
      const isFirst = edge === firstSide;
      return shares.flatMap((share, i) => {
        const found = placeAt(edge, isFirst ? share : 1 - share);
        if (found === null) return [];
        const { at, inward } = found;
        // Edges that are glued either way round have no first mark.
        const name = shares.length === 1 || !isPair ? one.letter : `${one.letter}${i + 1}`;
        return [straight('mark', at, { x: at.x + TICK_MM * inward.x, y: at.y + TICK_MM * inward.y }, name)];
      });
    });
  });
}

/** Places of match marks along a seam, shares of its length. @param isUneven  else they are alike from both ends, for edges that are glued either way round. */
export function matchShares(lengthMm: number, isUneven: boolean): readonly number[] {
  const count = Math.min(MOST_MARKS, Math.max(1, Math.ceil((lengthMm * (1 + UNEVEN)) / MARKS_APART_MM) - 1));
  return Array.from({ length: count }, (_, i) => (i + 1 + (i === 0 && isUneven ? UNEVEN / 2 : 0)) / (count + 1));
}

/** A place at a share of an edge's length and the direction inward there; null where the edge has no length. */
function placeAt({ segments }: ShapeEdge, share: number): { readonly at: Vec2; readonly inward: Vec2 } | null {
  const points = chainPoints(segments);
  const steps = points.slice(1).map((q, i) => Math.hypot(q.x - points[i].x, q.y - points[i].y));
  const whole = steps.reduce((sum, one) => sum + one, 0);
  if (!(chainLength(segments) > 0) || !(whole > 0)) return null;
  let left = share * whole;
  for (let i = 0; i < steps.length; i += 1) {
    if (left > steps[i] && i + 1 < steps.length) {
      left -= steps[i];
      continue;
    }
    if (steps[i] === 0) continue;
    const [p, q, s] = [points[i], points[i + 1], left / steps[i]];
    return {
      at: { x: p.x + s * (q.x - p.x), y: p.y + s * (q.y - p.y) },
      inward: { x: -(q.y - p.y) / steps[i], y: (q.x - p.x) / steps[i] },
    };
  }
  return null;
}
