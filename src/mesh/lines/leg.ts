import { orient2d } from '../../geom/predicates.ts';
import type { Surface } from '../surface.ts';
import { nextHalfedge, triangleOfHalfedge } from '../topology.ts';
import { pointOnHalfedge, weightsIn } from './mesh-point.ts';
import type { MeshPoint } from './mesh-line.ts';
import { sideShapesOf } from './side-shapes.ts';

/** A way over the surface through a row of triangles: it starts in triangle `first` and leaves one triangle after another through `gates`. */
export interface Leg {
  readonly from: MeshPoint;
  readonly to: MeshPoint;
  readonly first: number;
  /** Half-edges, each of the triangle that is left; the next triangle lies beyond its twin. */
  readonly gates: readonly number[];
}

/** A corner of the surface that a taut line touches, with the gates that turn about it: `from` to `to`, both included. */
export interface Touch {
  readonly vertex: number;
  readonly isLeft: boolean;
  readonly from: number;
  readonly to: number;
  /** Angle at the vertex in the triangle before the gates, on the side away from them, radians; and the same in the triangle after them. */
  readonly restBefore: number;
  readonly restAfter: number;
}

/** The shortest line from end to end that stays in the row of triangles. */
export interface TautLine {
  /** mm. */
  readonly length: number;
  /** Both ends included, without repeats. */
  readonly points: readonly MeshPoint[];
  readonly touches: readonly Touch[];
}

/** A row of triangles laid flat. Gate i runs from right to left, seen on the way. */
interface Layout {
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
  readonly lx: Float64Array;
  readonly ly: Float64Array;
  readonly rx: Float64Array;
  readonly ry: Float64Array;
  /** Vertices at the ends of each gate. */
  readonly left: Int32Array;
  readonly right: Int32Array;
}

/** A corner of the taut line: a place in the layout, the gate it belongs to, and on which side of it. */
interface Bend {
  readonly x: number;
  readonly y: number;
  readonly gate: number;
  readonly vertex: number;
}

/**
 * Pulls a line through a row of triangles taut: lays them flat one beside the other and keeps the funnel of what can be seen from the last
 * corner (Lee and Preparata, "Euclidean shortest paths in the presence of rectilinear barriers", 1984).
 */
export function pullTaut(surface: Surface, leg: Leg): TautLine {
  const flat = layOut(surface, leg);
  const bends = bendsOf(flat, leg.gates.length);
  let length = 0;
  for (let i = 1; i < bends.length; i += 1)
    length += Math.hypot(bends[i].x - bends[i - 1].x, bends[i].y - bends[i - 1].y);
  return { length, ...pointsThrough(surface, leg, flat, bends) };
}

function layOut(surface: Surface, leg: Leg): Layout {
  const { triangles, topology } = surface;
  const { length, foot, height } = sideShapesOf(surface);
  const count = leg.gates.length;
  const [lx, ly, rx, ry] = [0, 1, 2, 3].map(() => new Float64Array(count));
  const [left, right] = [new Int32Array(count), new Int32Array(count)];
  // The first triangle lies along the side it is left through, so that this gate needs no turning.
  const base = count > 0 ? leg.gates[0] : 3 * leg.first;
  const start = inShape(surface, leg.from, base, 0, 0, length[base], 0);
  let end = count > 0 ? start : inShape(surface, leg.to, base, 0, 0, length[base], 0);
  for (let i = 0; i < count; i += 1) {
    const h = leg.gates[i];
    if (i === 0) lx[0] = length[base];
    else {
      // The triangle between gate i - 1 and this one: its corners seen along the last gate, from that one's left end to its right end.
      const back = topology.twin[leg.gates[i - 1]];
      const [x, y] = third(lx[i - 1], ly[i - 1], rx[i - 1], ry[i - 1], foot[back], height[back]);
      const turnsAboutLeft = h === nextHalfedge(nextHalfedge(back));
      // back: left to right; next: right to the new corner; the one before: the new corner to left.
      [rx[i], ry[i]] = turnsAboutLeft ? [x, y] : [rx[i - 1], ry[i - 1]];
      [lx[i], ly[i]] = turnsAboutLeft ? [lx[i - 1], ly[i - 1]] : [x, y];
    }
    right[i] = triangles[h];
    left[i] = triangles[nextHalfedge(h)];
  }
  if (count > 0) {
    const i = count - 1;
    end = inShape(surface, leg.to, topology.twin[leg.gates[i]], lx[i], ly[i], rx[i], ry[i]);
  }
  return { ax: start[0], ay: start[1], bx: end[0], by: end[1], lx, ly, rx, ry, left, right };

  /** A point of a half-edge's triangle, where the half-edge lies from p to q. */
  function inShape(on: Surface, p: MeshPoint, h: number, px: number, py: number, qx: number, qy: number): number[] {
    const t = triangleOfHalfedge(h);
    const weights = weightsIn(topology, triangles, p, t);
    if (weights === null) throw new RangeError(`leg: point outside triangle ${t}`);
    const shapes = sideShapesOf(on);
    const [x, y] = third(px, py, qx, qy, shapes.foot[h], shapes.height[h]);
    const k = h % 3;
    const [wp, wq, wc] = [weights[k], weights[(k + 1) % 3], weights[(k + 2) % 3]];
    return [wp * px + wq * qx + wc * x, wp * py + wq * qy + wc * y];
  }
}

/** The corner across a side that lies from p to q, to the left of it. */
function third(px: number, py: number, qx: number, qy: number, foot: number, height: number): [number, number] {
  const size = Math.hypot(qx - px, qy - py);
  const [ux, uy] = size > 0 ? [(qx - px) / size, (qy - py) / size] : [1, 0];
  return [px + foot * ux - height * uy, py + foot * uy + height * ux];
}

/** The corners of the taut line, both ends included. Which corners are one is asked of their numbers, never of their places. */
function bendsOf(flat: Layout, count: number): Bend[] {
  const { lx, ly, rx, ry, left, right, ax, ay, bx, by } = flat;
  const bends: Bend[] = [{ x: ax, y: ay, gate: -1, vertex: -1 }];
  const leftAt = (i: number): Bend =>
    i === count ? { x: bx, y: by, gate: count, vertex: -2 } : { x: lx[i], y: ly[i], gate: i, vertex: left[i] };
  const rightAt = (i: number): Bend =>
    i === count ? { x: bx, y: by, gate: count, vertex: -2 } : { x: rx[i], y: ry[i], gate: i, vertex: right[i] };
  let apex = bends[0];
  let [l, r] = [apex, apex];
  const isApex = (one: Bend): boolean => one === apex || (one.vertex === apex.vertex && one.vertex >= 0);
  for (let i = 0; i <= count; i += 1) {
    const [nextLeft, nextRight] = [leftAt(i), rightAt(i)];
    // The right side of the funnel moves in, or over the left one: then the line bends there.
    if (isApex(r) || orient2d(apex.x, apex.y, r.x, r.y, nextRight.x, nextRight.y) >= 0) {
      if (isApex(r) || isApex(l) || orient2d(apex.x, apex.y, l.x, l.y, nextRight.x, nextRight.y) <= 0) r = nextRight;
      else {
        i = restart(l);
        continue;
      }
    }
    if (isApex(l) || orient2d(apex.x, apex.y, l.x, l.y, nextLeft.x, nextLeft.y) <= 0) {
      if (isApex(l) || isApex(r) || orient2d(apex.x, apex.y, r.x, r.y, nextLeft.x, nextLeft.y) >= 0) l = nextLeft;
      else i = restart(r);
    }
  }
  bends.push(leftAt(count));
  return bends;

  function restart(at: Bend): number {
    bends.push(at);
    apex = at;
    [l, r] = [at, at];
    return at.gate;
  }
}

function pointsThrough(
  surface: Surface,
  leg: Leg,
  flat: Layout,
  bends: readonly Bend[],
): { points: MeshPoint[]; touches: Touch[] } {
  const { lx, ly, rx, ry, left, right } = flat;
  const points: MeshPoint[] = [leg.from];
  const touched: { vertex: number; gate: number; piece: number }[] = [];
  for (let k = 1; k < bends.length; k += 1) {
    const [p, q] = [bends[k - 1], bends[k]];
    const [dx, dy] = [q.x - p.x, q.y - p.y];
    for (let i = p.gate + 1; i < q.gate; i += 1) {
      if (left[i] === p.vertex || right[i] === p.vertex || left[i] === q.vertex || right[i] === q.vertex) continue;
      const across = (lx[i] - rx[i]) * dy - (ly[i] - ry[i]) * dx;
      const share = across === 0 ? 0 : ((p.x - rx[i]) * dy - (p.y - ry[i]) * dx) / across;
      const point = pointOnHalfedge(surface, leg.gates[i], Math.min(1, Math.max(0, share)));
      if (point.at === 'vertex') touch(point.vertex, i, k);
      else points.push(point);
    }
    if (q.vertex >= 0) touch(q.vertex, q.gate, k);
  }
  points.push(leg.to);
  return {
    points,
    touches: touched.map(({ vertex, gate, piece }) => touchAt(surface, leg, flat, bends, vertex, gate, piece)),
  };

  function touch(vertex: number, gate: number, piece: number): void {
    const last = points[points.length - 1];
    if (last.at === 'vertex' && last.vertex === vertex) return;
    points.push({ at: 'vertex', vertex });
    touched.push({ vertex, gate, piece });
  }
}

function touchAt(
  surface: Surface,
  leg: Leg,
  flat: Layout,
  bends: readonly Bend[],
  vertex: number,
  gate: number,
  piece: number,
): Touch {
  const { angle } = sideShapesOf(surface);
  const { lx, ly, rx, ry, left, right } = flat;
  const isLeft = left[gate] === vertex;
  const own = isLeft ? left : right;
  let [from, to] = [gate, gate];
  while (from > 0 && own[from - 1] === vertex) from -= 1;
  while (to + 1 < own.length && own[to + 1] === vertex) to += 1;
  const [x, y] = isLeft ? [lx[gate], ly[gate]] : [rx[gate], ry[gate]];
  const before = bends[piece - 1];
  // A vertex the line goes straight through lies inside the piece that bends[piece] ends.
  const after = bends[piece].vertex === vertex ? bends[piece + 1] : bends[piece];
  const turn = (one: Bend, i: number): number => {
    const [gx, gy] = isLeft ? [rx[i] - x, ry[i] - y] : [lx[i] - x, ly[i] - y];
    const [px, py] = [one.x - x, one.y - y];
    return Math.abs(Math.atan2(gx * py - gy * px, gx * px + gy * py));
  };
  const back = surface.topology.twin[leg.gates[to]];
  // The vertex is where the gate ends (left) or starts (right): the angle there, in the triangle before and in the one after.
  const corner = (h: number, atEnd: boolean): number => angle[atEnd ? nextHalfedge(h) : h];
  return {
    vertex,
    isLeft,
    from,
    to,
    restBefore: corner(leg.gates[from], isLeft) - turn(before, from),
    restAfter: corner(back, !isLeft) - turn(after, to),
  };
}
