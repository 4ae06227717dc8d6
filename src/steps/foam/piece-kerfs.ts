import { crossingsOf } from '../../geom/line-crossings.ts';
import type { Ring } from '../../geom/ring.ts';
import { deg, pointAt2, type Vec2 } from '../../geom/vec.ts';
import type { FoamRules } from '../../model/foam-settings.ts';
import type { PieceKerfs } from '../../model/kerfs.ts';
import { kerfSizes } from './kerf-lines.ts';
import type { KerfTurn } from './kerf-turn.ts';
import type { PieceShape } from './piece-shape.ts';

/** The flat piece kerfs are drawn on. */
export type KerfedShape = Pick<PieceShape, 'uv' | 'face' | 'back' | 'thicknessMm'> & {
  readonly triangles: ArrayLike<number>;
};

/** A stretch of a line along which the piece has turned by one amount. */
type Stretch = readonly [Vec2, Vec2];

/** A line in the plane: a point on it and its direction, length 1. */
interface Line {
  readonly at: Vec2;
  readonly along: Vec2;
}

/** A kerf: its line, and what of it is cut. */
interface Kerf extends Line {
  readonly runs: readonly Float64Array[];
}

/** A run of a kerf shorter than this is left out, mm: the blade overruns it from its neighbour. */
const LEAST_RUN_MM = 1;

/**
 * The kerfs of a piece: one in the middle of each of as many equal shares of its turn as mouths shut in, and so nearer together where it bends
 * more. Each lies straight along the places that have turned as far, and runs from edge to edge of the side it is cut from.
 */
export function pieceKerfs(turn: KerfTurn, shape: KerfedShape, { hingeMm, kerfMm }: FoamRules): PieceKerfs {
  const { turnRad, wholeRad, isConvex } = turn;
  const { thicknessMm, uv, triangles } = shape;
  const { count, depthMm, turnEachRad, mouthMm, hingePct } = kerfSizes({
    thicknessMm,
    hingeMm,
    kerfMm,
    turnRad: wholeRad,
  });
  const side = isConvex ? 'back' : 'face';
  const { outline, holes } = shape[side];
  const rings = [outline, ...holes];
  const kerfs: Kerf[] = [];
  for (let i = 0; i < count; i += 1) {
    const stretches = stretchesAt((i + 0.5) * turnEachRad, uv, triangles, turnRad);
    const line = lineThrough(stretches);
    const runs = line === null ? [] : runsInside(rings, line, stretches);
    if (line !== null && runs.length > 0) kerfs.push({ ...line, runs });
  }
  return {
    side,
    widthMm: kerfMm,
    depthMm,
    hingeMm,
    turnDeg: deg(turnEachRad),
    mouthMm,
    hingePct,
    lines: kerfs.flatMap(({ runs }) => runs),
    spacingMm: spacingOf(kerfs),
  };
}

/** Where triangles have turned by so much: between their corners the turn is taken to grow evenly. */
function stretchesAt(
  level: number,
  uv: Float64Array,
  triangles: ArrayLike<number>,
  turnRad: Float64Array,
): readonly Stretch[] {
  const found: Stretch[] = [];
  for (let c = 0; c < triangles.length; c += 3) {
    const ends: Vec2[] = [];
    for (let k = 0; k < 3; k += 1) {
      const [v, w] = [triangles[c + k], triangles[c + ((k + 1) % 3)]];
      // A corner exactly at the level belongs to the side above it, so that no line is found twice.
      if (turnRad[v] >= level === turnRad[w] >= level) continue;
      const share = (level - turnRad[v]) / (turnRad[w] - turnRad[v]);
      const [p, q] = [pointAt2(uv, v), pointAt2(uv, w)];
      ends.push({ x: p.x + share * (q.x - p.x), y: p.y + share * (q.y - p.y) });
    }
    if (ends.length === 2) found.push([ends[0], ends[1]]);
  }
  return found;
}

/** The straight line that stretches lie nearest to by least squares, each by its length; null where there is none. */
function lineThrough(stretches: readonly Stretch[]): Line | null {
  let [whole, x, y] = [0, 0, 0];
  for (const [p, q] of stretches) {
    const length = Math.hypot(q.x - p.x, q.y - p.y);
    whole += length;
    x += (length * (p.x + q.x)) / 2;
    y += (length * (p.y + q.y)) / 2;
  }
  if (whole === 0) return null;
  const at = { x: x / whole, y: y / whole };
  let [xx, xy, yy] = [0, 0, 0];
  for (const [p, q] of stretches) {
    const length = Math.hypot(q.x - p.x, q.y - p.y);
    // Moments of an even stretch: those of its two ends and four times its middle, over six (Simpson's rule is exact here).
    for (const [end, weight] of [
      [p, 1],
      [{ x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 }, 4],
      [q, 1],
    ] as const) {
      const [dx, dy] = [end.x - at.x, end.y - at.y];
      xx += (length * weight * dx * dx) / 6;
      xy += (length * weight * dx * dy) / 6;
      yy += (length * weight * dy * dy) / 6;
    }
  }
  const angle = Math.atan2(2 * xy, xx - yy) / 2;
  return { at, along: { x: Math.cos(angle), y: Math.sin(angle) } };
}

/** What of a line lies inside the rings and beside its stretches: all of it from edge to edge, not what lies inside elsewhere. */
function runsInside(
  rings: readonly Ring[],
  { at, along }: Line,
  stretches: readonly Stretch[],
): readonly Float64Array[] {
  const place = (p: Vec2): number => (p.x - at.x) * along.x + (p.y - at.y) * along.y;
  const spans = stretches.map(([p, q]) => [place(p), place(q)].sort((a, b) => a - b));
  const reaches = crossingsOf(rings, at, along).sort((a, b) => a - b);
  const runs: Float64Array[] = [];
  for (let i = 0; i + 1 < reaches.length; i += 2) {
    const [from, to] = [reaches[i], reaches[i + 1]];
    if (to - from < LEAST_RUN_MM || !spans.some(([a, b]) => b > from && a < to)) continue;
    runs.push(Float64Array.of(at.x + from * along.x, at.y + from * along.y, at.x + to * along.x, at.y + to * along.y));
  }
  return runs;
}

/** From the ends of each run to the lines beside its own: nearest and farthest. */
function spacingOf(kerfs: readonly Kerf[]): PieceKerfs['spacingMm'] {
  const spaces = kerfs.flatMap(({ runs }, i) =>
    [kerfs[i - 1], kerfs[i + 1]].flatMap((beside) =>
      beside === undefined ? [] : runs.flatMap((run) => [0, 1].map((end) => distanceTo(beside, pointAt2(run, end)))),
    ),
  );
  return spaces.length === 0 ? { least: 0, most: 0 } : { least: Math.min(...spaces), most: Math.max(...spaces) };
}

const distanceTo = ({ at, along }: Line, p: Vec2): number => Math.abs((p.x - at.x) * along.y - (p.y - at.y) * along.x);
