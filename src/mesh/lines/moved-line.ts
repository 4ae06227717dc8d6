import { ok, type Result } from '../../base/result.ts';
import type { Stepwise } from '../../base/stepwise.ts';
import { add3, dot3, length3, scale3, sub3, type Vec3 } from '../../geom/vec.ts';
import type { Surface } from '../surface.ts';
import { triangleOfHalfedge } from '../topology.ts';
import { layLine, nearestAlong, pointAlong, type LaidLine } from './along-line.ts';
import { lineThrough } from './line-through.ts';
import type { MeshLine, MeshPoint } from './mesh-line.ts';
import { placeOf, pointAtPlace, withoutDoubles } from './mesh-point.ts';
import { readyForLinesSteps } from './shortest-line.ts';

/** Share of a line that comes along to each side of the hand at least, and how far to each side it comes along for every mm it is dragged: as seams along edges. */
const LEAST_SHARE = 0.08;
const PULL = 1.5;
/** Of a closed line so much comes along to each side at most: the rest holds it where it is. */
const MOST_SHARE_ROUND = 0.4;
/** Taken hold of within this share of its length from an end on an open edge, the end itself goes along that edge. */
const END_SHARE = 0.04;

/**
 * A line dragged over the surface: it runs through another place, from there straight back to where it was, and the farther it is dragged the
 * more of it comes along. Its ends stay; an end on an open edge that is taken hold of itself goes along open edges.
 * @param grabbed  where it was taken hold of, mm, in space.
 * @param to       where that is to lie.
 * @returns the line and where on it the hand is; `seams/no-path` where the place lies on another surface.
 */
export function* movedLineSteps(
  surface: Surface,
  line: MeshLine,
  grabbed: Vec3,
  to: MeshPoint,
): Stepwise<Result<{ readonly line: MeshLine; readonly at: MeshPoint }>> {
  yield* readyForLinesSteps(surface);
  const laid = layLine(surface, line);
  const { lengthMm } = laid;
  const { mm: hold } = nearestAlong(laid, grabbed);
  const away = length3(sub3(placeOf(surface, to), placeOf(surface, pointAlong(surface, laid, hold))));
  const reach = Math.max(LEAST_SHARE * lengthMm, PULL * away);
  if (line.closed) {
    const half = Math.min(reach, MOST_SHARE_ROUND * lengthMm);
    const rest = stretchRound(surface, laid, hold + half, hold - half + lengthMm);
    return through(surface, [to, ...rest], to, true);
  }
  const [first, last] = [hold - reach, hold + reach];
  const end = heldEnd(surface, laid, hold);
  const at = end === null ? to : onOpenEdge(surface, placeOf(surface, to));
  const head = end === 'first' ? [] : stretch(surface, laid, 0, Math.max(0, first));
  const tail = end === 'last' ? [] : stretch(surface, laid, Math.min(lengthMm, last), lengthMm);
  return through(surface, [...head, at, ...tail], at, false);
}

function through(
  surface: Surface,
  points: readonly MeshPoint[],
  at: MeshPoint,
  closed: boolean,
): Result<{ readonly line: MeshLine; readonly at: MeshPoint }> {
  const line = lineThrough(surface, withoutDoubles(points, closed), closed);
  return line.ok ? ok({ line: line.value, at }) : line;
}

/** Points of a line between two ways along it, both included, mm. */
function stretch(surface: Surface, line: LaidLine, from: number, to: number): MeshPoint[] {
  const inner = line.points.filter((_, i) => line.way[i] > from && line.way[i] < to);
  return [pointAlong(surface, line, from), ...inner, pointAlong(surface, line, to)];
}

/** The same of a closed line, on past its start. */
function stretchRound(surface: Surface, line: LaidLine, from: number, to: number): MeshPoint[] {
  const { lengthMm } = line;
  if (from >= lengthMm) return stretch(surface, line, from - lengthMm, to - lengthMm);
  if (to <= lengthMm) return stretch(surface, line, from, to);
  return [...stretch(surface, line, from, lengthMm), ...stretch(surface, line, 0, to - lengthMm)];
}

/** The end that is taken hold of, where it lies on an open edge. */
function heldEnd(surface: Surface, { points, lengthMm }: LaidLine, hold: number): 'first' | 'last' | null {
  const near = END_SHARE * lengthMm;
  if (hold <= near && isOnRim(surface, points[0])) return 'first';
  return hold >= lengthMm - near && isOnRim(surface, points[points.length - 1]) ? 'last' : null;
}

const isOpen = ({ topology }: Surface, edge: number): boolean => topology.twin[topology.halfedgeOfEdge[edge]] < 0;

function isOnRim(surface: Surface, p: MeshPoint): boolean {
  if (p.at === 'edge') return isOpen(surface, p.edge);
  if (p.at === 'triangle') return false;
  const { edgeVertices, edgeCount } = surface.topology;
  for (let e = 0; e < edgeCount; e += 1)
    if ((edgeVertices[2 * e] === p.vertex || edgeVertices[2 * e + 1] === p.vertex) && isOpen(surface, e)) return true;
  return false;
}

/** The nearest place of all open edges; there is one at least. */
function onOpenEdge(surface: Surface, place: Vec3): MeshPoint {
  const { positions, topology } = surface;
  const { edgeVertices, edgeCount, halfedgeOfEdge } = topology;
  const corner = (v: number): Vec3 => ({ x: positions[3 * v], y: positions[3 * v + 1], z: positions[3 * v + 2] });
  let best = { edge: -1, place, distance: Infinity };
  for (let e = 0; e < edgeCount; e += 1) {
    if (!isOpen(surface, e)) continue;
    const [a, b] = [corner(edgeVertices[2 * e]), corner(edgeVertices[2 * e + 1])];
    const way = sub3(b, a);
    const square = dot3(way, way);
    const share = square > 0 ? Math.min(1, Math.max(0, dot3(sub3(place, a), way) / square)) : 0;
    const foot = add3(a, scale3(way, share));
    const distance = length3(sub3(place, foot));
    if (distance < best.distance) best = { edge: e, place: foot, distance };
  }
  return pointAtPlace(surface, triangleOfHalfedge(halfedgeOfEdge[best.edge]), best.place);
}
