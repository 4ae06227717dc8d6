import { LINE_SNAP_SHARE } from '../../base/tolerance.ts';
import type { Surface } from '../surface.ts';
import { triangleOfHalfedge } from '../topology.ts';
import { flatCorners, type Heading } from './heading.ts';
import { isSamePoint, pointInTriangle, pointOnHalfedge, weightsIn, type Weights } from './mesh-point.ts';
import type { MeshLine, MeshPoint } from './mesh-line.ts';
import { alongSide, angleInRound, headingInRound, roundAt } from './round.ts';

/** A line that runs straight on, as far as it came. */
export interface StraightestLine {
  readonly line: MeshLine;
  /** Length reached, mm: what was asked for, unless the line came to an open edge. */
  readonly lengthMm: number;
  /** How it arrives at its last point. */
  readonly arrives: Heading;
  /** True where it ended at an open edge before its length was reached. */
  readonly isAtOpenEdge: boolean;
}

/** Triangles a line may pass for each one the surface has: a long line may go round a ring many times, but not for ever. */
const MOST_ROUNDS = 1000;
/** Share of its length by which a line may end early: rounding of its sum. */
const ROUNDING_SHARE = 1e-13;

/**
 * Runs straight on from a point: straight over the triangles laid flat side by side, and past a corner with the same angle on its left and its
 * right (Polthier and Schmies, "Straightest geodesics on polyhedral surfaces", 1998). It ends at open edges, and at corners that lie on one.
 * @param heading   in a triangle that holds `from`.
 * @param lengthMm  >= 0, else RangeError.
 */
export function straightestLine(
  surface: Surface,
  from: MeshPoint,
  heading: Heading,
  lengthMm: number,
): StraightestLine {
  if (!(lengthMm >= 0)) throw new RangeError(`length ${lengthMm} mm`);
  const { topology, triangles } = surface;
  const points: MeshPoint[] = [from];
  const start = weightsIn(topology, triangles, from, heading.triangle);
  if (start === null) throw new RangeError('straightest line: the heading is not at its start');
  let [weights, rest, isAtOpenEdge]: [Weights, number, boolean] = [start, lengthMm, false];
  let here = heading;
  const most = MOST_ROUNDS * (triangles.length / 3) + 3;
  for (let passed = 0; passed < most && rest > 0; passed += 1) {
    const out = leave(surface, here, weights);
    if (out.length >= rest) {
      push(pointInTriangle(surface, here.triangle, blend(weights, out.weights, rest / out.length)));
      rest = 0;
      break;
    }
    push(out.point);
    rest -= out.length;
    // What is left is rounding: the line ends on this side, and arrives in the triangle it comes from.
    if (rest <= ROUNDING_SHARE * lengthMm) rest = 0;
    if (rest === 0) break;
    const next =
      out.point.at === 'vertex'
        ? pastVertex(surface, here, out.point.vertex)
        : out.halfedge >= 0
          ? overSide(surface, here, out.halfedge)
          : null;
    if (next === null) {
      isAtOpenEdge = true;
      break;
    }
    here = next;
    weights = weightsIn(topology, triangles, out.point, here.triangle) as Weights;
  }
  return { line: { points, closed: false }, lengthMm: lengthMm - rest, arrives: here, isAtOpenEdge };

  function push(p: MeshPoint): void {
    if (!isSamePoint(points[points.length - 1], p)) points.push(p);
  }
}

const blend = (a: Weights, b: Weights, share: number): Weights => {
  // Rounding may leave a shade less than nothing.
  const mix = (k: number): number => Math.max(0, a[k] + (Number.isFinite(share) ? share : 0) * (b[k] - a[k]));
  return [mix(0), mix(1), mix(2)];
};

/** Where a ray leaves its triangle: through the side whose start lies to its right and whose end to its left. */
function leave(
  surface: Surface,
  { triangle, x, y }: Heading,
  weights: Weights,
): { point: MeshPoint; weights: Weights; length: number; halfedge: number } {
  const corners = flatCorners(surface, triangle);
  const [px, py] = (['x', 'y'] as const).map(
    (axis) => weights[0] * corners[0][axis] + weights[1] * corners[1][axis] + weights[2] * corners[2][axis],
  );
  // A corner the point stands on is on neither side; the others by the sine of what they stand off the ray.
  const side = corners.map((c, k) => (weights[k] === 1 ? 0 : x * (c.y - py) - y * (c.x - px)));
  const ahead = corners.map((c) => x * (c.x - px) + y * (c.y - py));
  for (let k = 0; k < 3; k += 1) {
    const j = (k + 1) % 3;
    if (!(side[k] < 0 && side[j] > 0)) continue;
    const share = side[k] / (side[k] - side[j]);
    if (share <= LINE_SNAP_SHARE) return atCorner(k);
    if (share >= 1 - LINE_SNAP_SHARE) return atCorner(j);
    const out: [number, number, number] = [0, 0, 0];
    [out[k], out[j]] = [1 - share, share];
    const length = Math.max(0, (1 - share) * ahead[k] + share * ahead[j]);
    const halfedge = 3 * triangle + k;
    return { point: pointOnHalfedge(surface, halfedge, share), weights: out, length, halfedge };
  }
  // Straight through a corner or along a side: the corner the ray comes nearest to, by the angle.
  const cosine = ahead.map((far, k) => (weights[k] === 1 ? -2 : far / Math.hypot(far, side[k]) || -1));
  return atCorner(cosine.indexOf(Math.max(...cosine)));

  function atCorner(k: number): ReturnType<typeof leave> {
    const out: [number, number, number] = [0, 0, 0];
    out[k] = 1;
    const point: MeshPoint = { at: 'vertex', vertex: surface.triangles[3 * triangle + k] };
    return { point, weights: out, length: Math.max(0, ahead[k]), halfedge: -1 };
  }
}

/** The same direction in the triangle across a half-edge, both laid flat about it; null at an open edge. */
function overSide(surface: Surface, { triangle, x, y }: Heading, h: number): Heading | null {
  const across = surface.topology.twin[h];
  if (across < 0) return null;
  const [u, v] = [alongSide(surface, h), alongSide(surface, across)];
  const [forward, out] = [x * u.x + y * u.y, x * u.y - y * u.x];
  const next = triangleOfHalfedge(across);
  if (next === triangle) throw new RangeError('straightest line: a triangle beside itself');
  // The twin runs the other way; what led out of one triangle leads into the other, to the left of its side.
  return { triangle: next, x: -forward * v.x - out * v.y, y: -forward * v.y + out * v.x };
}

/** The direction that leaves a vertex with the same angle on both sides as the one that arrives at it; null where it lies on an open edge. */
function pastVertex(surface: Surface, arriving: Heading, v: number): Heading | null {
  const round = roundAt(surface, { at: 'vertex', vertex: v }, arriving.triangle);
  if (round.isOpen) return null;
  // Looking back along the line, then half way round.
  const back = angleInRound(round, { triangle: arriving.triangle, x: -arriving.x, y: -arriving.y });
  return headingInRound(round, back + round.total / 2);
}
