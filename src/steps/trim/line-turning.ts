import { headingBetween, type Heading } from '../../mesh/lines/heading.ts';
import { layLine, nearestAlong, type LaidLine } from '../../mesh/lines/along-line.ts';
import type { MeshLine, MeshPoint } from '../../mesh/lines/mesh-line.ts';
import { sharedTriangle, trianglesAt, weightsIn } from '../../mesh/lines/mesh-point.ts';
import { angleInRound, roundAt, type Round } from '../../mesh/lines/round.ts';
import { sideShapesOf } from '../../mesh/lines/side-shapes.ts';
import type { Surface } from '../../mesh/surface.ts';
import { cross3, dot3, pointAt3, scale3, sub3, add3, unit3, type Vec3 } from '../../geom/vec.ts';
import { vertexTurns, type VertexTurns } from './vertex-turns.ts';

/** How a line on the surface turns within the surface. */
export interface LineTurning {
  readonly line: MeshLine;
  readonly laid: LaidLine;
  /** Mean side of the triangles it runs through, mm. */
  readonly meshMm: number;
  /** Ways along, mm, ascending, at which it turns, and by how much, radians, to the left > 0. Of a closed line the turn at its first point stands at way 0. */
  readonly ways: Float64Array;
  readonly turns: Float64Array;
}

/** Sharper summits are corners of the sculpt, not rounding of its facets, and stay where they are, radians. */
const CORNER_RAD = 0.25;
/** What the facets hold of curvature is spread over so many of their sides to each side of the line, and twice as many. */
const SPREAD_SIDES = 1;

/**
 * The turning of a line within the surface, the geodesic curvature of its strip summed up: at each of its points what the angle on its left misses of half a
 * turn, less so much of what the corner there misses of a full turn as lies on its left (Polthier and Schmies, "Straightest geodesics on polyhedral surfaces",
 * 1998, where it is half and half). Facets gather curvature in their corners, and the cell of a corner need not lie half on each side, so that is parted by
 * the area of the triangles on both sides; at corners of the sculpt itself it is halved.
 *
 * A line across facets passes beside their corners and would turn less or more than one on the round form (Gauss and Bonnet: a line that is moved over a corner
 * turns by what that misses). Of such a line each corner near it is spread over hats of one and two sides of the mesh, 4 / 3 of the first less 1 / 3 of the
 * second, so that curvature that changes evenly does no harm. Along an open edge only the side that is there is asked, and the half cells at the edge, which no
 * corner inside counts, take the curvature of their neighbours.
 */
export function lineTurning(surface: Surface, line: MeshLine): LineTurning {
  const laid = layLine(surface, line);
  const corners = vertexTurns(surface);
  const { points, closed } = line;
  const meshMm = meanSide(surface, points);
  const found: [way: number, turn: number][] = [];
  const count = points.length;
  const own = new Set(points.flatMap((p) => (p.at === 'vertex' ? [p.vertex] : [])));
  const isAlongEdges = points.every(({ at }) => at === 'vertex');
  for (let i = closed ? 0 : 1; i < (closed ? count : count - 1); i += 1) {
    const turn = turnAt(
      surface,
      corners,
      isAlongEdges ? own : null,
      points[(i + count - 1) % count],
      points[i],
      points[(i + 1) % count],
    );
    if (turn !== 0) found.push([laid.way[i], turn]);
  }
  if (!isAlongEdges) spreadCorners(surface, corners, own, laid, SPREAD_SIDES * meshMm, closed, found);
  found.sort((a, b) => a[0] - b[0]);
  return {
    line,
    laid,
    meshMm,
    ways: Float64Array.from(found, ([way]) => way),
    turns: Float64Array.from(found, ([, turn]) => turn),
  };
}

/** Turn at a point between its neighbours, radians, left > 0. @param row  corners of a line along edges alone, else null. */
function turnAt(
  surface: Surface,
  corners: VertexTurns,
  row: ReadonlySet<number> | null,
  before: MeshPoint,
  p: MeshPoint,
  after: MeshPoint,
): number {
  const out = headingFrom(surface, p, after);
  const back = headingFrom(surface, p, before);
  if (out === null || back === null) return 0;
  const round = roundAt(surface, p, out.triangle);
  const turned = angleInRound(round, back) - angleInRound(round, out);
  if (!round.isOpen) {
    const left = turned < 0 ? turned + round.total : turned;
    const missing = 2 * Math.PI - round.total;
    if (p.at !== 'vertex' || Math.abs(missing) > CORNER_RAD) return Math.PI - left - missing / 2;
    const start = angleInRound(round, out);
    const share = leftShare(surface, round, start, left);
    const uneven = row === null ? 0 : unevenTurn(surface, corners, row, p.vertex, { round, start, left, share });
    return Math.PI - left - share * missing - uneven;
  }
  // On an open edge: the foam lies on one side only.
  const half = p.at === 'vertex' ? corners.atRim[p.vertex] : 0;
  return turned > 0 ? Math.PI - turned - half : -turned - Math.PI + half;
}

/** Share of the area of the triangles round a corner that lies left of a line through it. @param left angle on the left, radians. */
function leftShare(surface: Surface, round: Round, start: number, left: number): number {
  const { length, height } = sideShapesOf(surface);
  let [before, own, all] = [0, 0, 0];
  for (const { triangle, angle } of round.parts) {
    const area = length[3 * triangle] * height[3 * triangle];
    const turned = before + angle / 2 - start;
    before += angle;
    all += area;
    if ((turned < 0 ? turned + round.total : turned) < left) own += area;
  }
  return all > 0 ? own / all : 0.5;
}

/**
 * What curvature that grows or falls across the line puts on its left beyond the left cell's share of the corner's own, K the curvature of the corners next to
 * it on each side: (K left - K right) times the cell times share and rest of it over 4. Of rows h and h' apart the slope of the curvature is that difference
 * over h + h', and the turning, known half a row to each side, is at the row itself by the slope times h h' / 8 other than straight between.
 * A corner that several of the line's own have beside them is shared among them.
 */
function unevenTurn(
  surface: Surface,
  { missing, isRim, cell }: VertexTurns,
  own: ReadonlySet<number>,
  middle: number,
  { round, start, left, share }: { round: Round; start: number; left: number; share: number },
): number {
  const sums = [0, 0];
  const cells = [0, 0];
  let before = 0;
  for (const { triangle, angle } of round.parts) {
    const turned = before < start ? before - start + round.total : before - start;
    before += angle;
    const vertex = nextCorner(surface, triangle, middle);
    if (own.has(vertex)) continue;
    // At an open edge, and beside a corner of the sculpt, nothing is known of how curvature changes.
    if (isRim[vertex] === 1 || Math.abs(missing[vertex]) > CORNER_RAD) return 0;
    const side = turned < left ? 0 : 1;
    const among = ownBeside(surface, vertex, own);
    sums[side] += missing[vertex] / among;
    cells[side] += cell[vertex] / among;
  }
  if (!(cells[0] > 0 && cells[1] > 0)) return 0;
  return ((sums[0] / cells[0] - sums[1] / cells[1]) * cell[middle] * share * (1 - share)) / 4;
}

/** The corner after a given one in a triangle. */
function nextCorner({ triangles }: Surface, triangle: number, v: number): number {
  let k = 0;
  while (triangles[3 * triangle + k] !== v) k += 1;
  return triangles[3 * triangle + ((k + 1) % 3)];
}

/** How many of the line's own corners lie next to a corner, at least 1. */
function ownBeside(surface: Surface, vertex: number, own: ReadonlySet<number>): number {
  const near = trianglesAt(surface, { at: 'vertex', vertex }).flatMap((t) =>
    [0, 1, 2].map((k) => surface.triangles[3 * t + k]),
  );
  return Math.max(1, new Set(near.filter((v) => own.has(v))).size);
}

/** The heading from one point of a line to its next. */
export function headingFrom(surface: Surface, p: MeshPoint, q: MeshPoint): Heading | null {
  const t = sharedTriangle(surface, p, q);
  if (t < 0) return null;
  const { topology, triangles } = surface;
  const [from, to] = [weightsIn(topology, triangles, p, t), weightsIn(topology, triangles, q, t)];
  return from && to && headingBetween(surface, t, from, to);
}

/** Adds what the corners beside the line do to a line that is as broad as the hat. */
function spreadCorners(
  surface: Surface,
  corners: VertexTurns,
  own: ReadonlySet<number>,
  laid: LaidLine,
  spreadMm: number,
  closed: boolean,
  found: [number, number][],
): void {
  const { positions, triangles } = surface;
  for (const v of verticesNear(surface, laid, 2 * spreadMm)) {
    const missing = corners.missing[v];
    if (own.has(v) || missing === 0 || Math.abs(missing) > CORNER_RAD) continue;
    const p = pointAt3(positions, v);
    const { mm, piece, share, distanceMm } = nearestAlong(laid, p);
    if (distanceMm >= 2 * spreadMm || (!closed && (mm <= 0 || mm >= laid.lengthMm))) continue;
    const [a, b] = [laid.places[piece], laid.places[piece + 1]];
    const foot = add3(a, scale3(sub3(b, a), share));
    const t = sharedTriangle(surface, laid.points[piece], laid.points[piece + 1]);
    const up = normalOf(positions, triangles, Math.max(0, t));
    const isLeft = dot3(cross3(up, sub3(b, a)), sub3(p, foot)) > 0;
    const hat = (reach: number): number => 0.5 * Math.max(0, 1 - distanceMm / reach) ** 2;
    const weight = (4 * hat(spreadMm) - hat(2 * spreadMm)) / 3;
    found.push([mm, isLeft ? weight * missing : -weight * missing]);
  }
}

const normalOf = (positions: Float64Array, triangles: Uint32Array, t: number): Vec3 => {
  const [a, b, c] = [0, 1, 2].map((k) => pointAt3(positions, triangles[3 * t + k]));
  return unit3(cross3(sub3(b, a), sub3(c, a)));
};

/** Vertices no farther from the line than this, reached from its own triangles through others that are as near. */
function verticesNear(surface: Surface, laid: LaidLine, mostMm: number): number[] {
  const { positions, triangles } = surface;
  const isSeen = new Set<number>();
  const queue: number[] = [];
  const visit = (t: number): void => {
    for (let k = 0; k < 3; k += 1) {
      const v = triangles[3 * t + k];
      if (isSeen.has(v)) continue;
      isSeen.add(v);
      queue.push(v);
    }
  };
  for (const p of laid.points) for (const t of trianglesAt(surface, p)) visit(t);
  const near: number[] = [];
  for (let i = 0; i < queue.length; i += 1) {
    const v = queue[i];
    if (nearestAlong(laid, pointAt3(positions, v)).distanceMm >= mostMm) continue;
    near.push(v);
    for (const t of trianglesAt(surface, { at: 'vertex', vertex: v })) visit(t);
  }
  return near.sort((v, w) => v - w);
}

function meanSide(surface: Surface, points: readonly MeshPoint[]): number {
  const { positions, triangles } = surface;
  const own = new Set(points.flatMap((p) => trianglesAt(surface, p)));
  let [sum, count] = [0, 0];
  for (const t of own)
    for (let k = 0; k < 3; k += 1) {
      const [p, q] = [triangles[3 * t + k], triangles[3 * t + ((k + 1) % 3)]].map((v) => pointAt3(positions, v));
      sum += Math.hypot(p.x - q.x, p.y - q.y, p.z - q.z);
      count += 1;
    }
  return count === 0 ? 0 : sum / count;
}
