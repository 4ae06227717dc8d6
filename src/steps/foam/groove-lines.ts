import { crossingsOf } from '../../geom/line-crossings.ts';
import type { Ring } from '../../geom/ring.ts';
import type { Vec2 } from '../../geom/vec.ts';
import type { FoamPiece, PieceFold, TracedSide } from '../../model/foam-piece.ts';

/**
 * Where grooves come out on one side of the foam: two lines beside each fold that is grooved from there, in the piece's frame, mm, `x y x y`
 * each. A line whose fold ends on the edge of the piece runs on to where that side ends, or stops there.
 */
export function grooveLines(piece: FoamPiece, side: TracedSide): readonly Float64Array[] {
  const isTraced = side === piece.tracedSide;
  const cut = isTraced ? [piece.outline, ...piece.holes] : [piece.otherOutline, ...piece.otherHoles];
  const onEdge = pointsOf([piece.neutralOutline, ...piece.neutralHoles]);
  return piece.folds.flatMap((fold) => {
    if (fold.groove?.side !== side) return [];
    return [fold.groove.widthMm / 2, -fold.groove.widthMm / 2].flatMap((aside) => lineBeside(fold, aside, cut, onEdge));
  });
}

const keyOf = ({ x, y }: Vec2): string => `${x} ${y}`;

function pointsOf(rings: readonly Ring[]): ReadonlySet<string> {
  const keys = new Set<string>();
  for (const ring of rings) for (let i = 0; i < ring.length; i += 2) keys.add(keyOf({ x: ring[i], y: ring[i + 1] }));
  return keys;
}

/** One edge of a groove, or nothing where it lies outside the piece. */
function lineBeside(
  { from, to }: PieceFold,
  aside: number,
  cut: readonly Ring[],
  onEdge: ReadonlySet<string>,
): Float64Array[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length === 0) return [];
  const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const start = { x: from.x - aside * along.y, y: from.y + aside * along.x };
  const middle = { x: start.x + (along.x * length) / 2, y: start.y + (along.y * length) / 2 };
  const reaches = crossingsOf(cut, middle, along);
  // Inside, the line meets the cut an odd number of times ahead and behind.
  if (reaches.filter((reach) => reach > 0).length % 2 === 0) return [];
  const half = length / 2;
  const [ahead, behind] = [1, -1].map((sign) => {
    const nearest = reaches.reduce(
      (least, reach) => (sign * reach > 0 ? Math.min(least, sign * reach) : least),
      Infinity,
    );
    const runsOn = onEdge.has(keyOf(sign > 0 ? to : from)) && nearest < half + MOST_BEYOND * Math.abs(aside);
    return runsOn ? nearest : Math.min(nearest, half);
  });
  return [
    Float64Array.of(
      middle.x - behind * along.x,
      middle.y - behind * along.y,
      middle.x + ahead * along.x,
      middle.y + ahead * along.y,
    ),
  ];
}

/** How far past its fold's end a line runs on to the cut, in half widths: farther off the edge does not belong to that end. */
const MOST_BEYOND = 6;
