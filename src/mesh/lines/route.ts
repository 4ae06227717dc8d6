import { MinHeap } from '../../base/min-heap.ts';
import { inStretches, runAtOnce, type Stepwise } from '../../base/stepwise.ts';
import { length3, pointAt3, sub3, type Vec3 } from '../../geom/vec.ts';
import type { Surface } from '../surface.ts';
import { nextHalfedge, prevHalfedge, triangleOfHalfedge } from '../topology.ts';
import { cornersOf, placeOf, trianglesAt } from './mesh-point.ts';
import type { Leg } from './leg.ts';
import type { MeshPoint } from './mesh-line.ts';
import { sideShapesOf, sideShapeSteps } from './side-shapes.ts';

/** Where a search may go from each vertex: along its edges, and straight over each side across it to the corner beyond. */
interface Hops {
  readonly starts: Uint32Array;
  readonly to: Uint32Array;
  readonly length: Float64Array;
}

/**
 * Finds short ways over one surface from corner to corner: Dijkstra's search (1959) led by the straight line in space (Hart, Nilsson and
 * Raphael 1968). It keeps its room, so that many short searches cost no more than what they look at.
 */
class RouteFinder {
  readonly #surface: Surface;
  readonly #hops: Hops;
  readonly #distance: Float64Array;
  readonly #cameFrom: Int32Array;
  /** The search that last came to a vertex. */
  readonly #stamp: Uint32Array;
  #search = 0;

  constructor(surface: Surface, hops: Hops) {
    this.#surface = surface;
    this.#hops = hops;
    const count = surface.positions.length / 3;
    this.#distance = new Float64Array(count);
    this.#cameFrom = new Int32Array(count);
    this.#stamp = new Uint32Array(count);
  }

  /**
   * Vertices from one point to another; none in between where they share a triangle. Null where no way leads.
   * @param most  ways longer than this, mm, are not looked for.
   */
  find(from: MeshPoint, to: MeshPoint, most: number): number[] | null {
    const { positions, triangles } = this.#surface;
    const [starts, ends] = [trianglesAt(this.#surface, from), trianglesAt(this.#surface, to)];
    if (starts.some((t) => ends.includes(t))) return [];
    const [start, goal] = [placeOf(this.#surface, from), placeOf(this.#surface, to)];
    const wayTo = (p: Vec3, v: number): number => length3(sub3(pointAt3(positions, v), p));
    const lastWay = new Map<number, number>();
    for (const v of ends.flatMap((t) => [...triangles.subarray(3 * t, 3 * t + 3)])) lastWay.set(v, wayTo(goal, v));
    this.#search += 1;
    const heap = new MinHeap();
    const offer = (v: number, distance: number, by: number): void => {
      if (this.#stamp[v] === this.#search && distance >= this.#distance[v]) return;
      this.#stamp[v] = this.#search;
      this.#distance[v] = distance;
      this.#cameFrom[v] = by;
      heap.push(distance + wayTo(goal, v), v);
    };
    for (const t of starts) for (const v of triangles.subarray(3 * t, 3 * t + 3)) offer(v, wayTo(start, v), -1);
    let best = most;
    let last = -1;
    while (heap.size > 0) {
      const { key, item: v } = heap.pop();
      if (key >= best) break;
      const here = this.#distance[v];
      if (key > here + wayTo(goal, v)) continue;
      const rest = lastWay.get(v);
      if (rest !== undefined && here + rest < best) [best, last] = [here + rest, v];
      const { starts: first, to: next, length } = this.#hops;
      for (let i = first[v]; i < first[v + 1]; i += 1) offer(next[i], here + length[i], v);
    }
    if (last < 0) return null;
    const route: number[] = [];
    for (let v = last; v >= 0; v = this.#cameFrom[v]) route.push(v);
    return route.reverse();
  }
}

const known = new WeakMap<Surface, RouteFinder>();

const finderOf = (surface: Surface): RouteFinder => known.get(surface) ?? runAtOnce(finderSteps(surface));

/** Makes ready for lines on a surface, in stretches: what every search needs is found once, and whoever goes first pays for those who come after. */
export function* finderSteps(surface: Surface): Stepwise<RouteFinder> {
  let finder = known.get(surface);
  if (finder === undefined) {
    yield* sideShapeSteps(surface);
    finder = new RouteFinder(surface, yield* hopSteps(surface));
    known.set(surface, finder);
  }
  return finder;
}

/**
 * A short way between two points as rows of triangles: one leg, or several that meet in corners where the surface hangs together in that
 * corner alone. Null where no way leads, or none shorter than `most`, mm.
 */
export function routeLegs(surface: Surface, from: MeshPoint, to: MeshPoint, most = Infinity): Leg[] | null {
  const route = finderOf(surface).find(from, to, most);
  return route === null ? null : legsThrough(surface, from, route, to);
}

/** The rows of triangles from a point through vertices to a point. Each vertex must be next to the last one, or across one side. */
function legsThrough(surface: Surface, from: MeshPoint, route: readonly number[], to: MeshPoint): Leg[] {
  const legs: Leg[] = [];
  const ends = new Set(trianglesAt(surface, to));
  let start = from;
  let here = trianglesAt(surface, from);
  if (route.length === 0) {
    const shared = here.find((t) => ends.has(t));
    if (shared === undefined) throw new RangeError('route: no vertices between points that share no triangle');
    return [{ from, to, first: shared, gates: [] }];
  }
  const holds = (t: number, v: number): boolean => surface.triangles.subarray(3 * t, 3 * t + 3).includes(v);
  let first = here.find((t) => holds(t, route[0]));
  if (first === undefined) throw new RangeError('route: the first vertex is not next to the start');
  let gates: number[] = [];
  let at = first;
  route.forEach((v, i) => {
    const isLast = i + 1 === route.length;
    const next = route[i + 1];
    const isGoal = isLast
      ? (t: number): boolean => ends.has(t)
      : (t: number): boolean => holds(t, next) || beyond(surface, t, v, next) >= 0;
    let turn = turnAbout(surface, at, v, isGoal);
    if (turn === null) {
      // The surface goes on beyond this corner without a side in common.
      legs.push({ from: start, to: { at: 'vertex', vertex: v }, first: first as number, gates });
      start = { at: 'vertex', vertex: v };
      here = trianglesAt(surface, start);
      const other = here.find((t) => isGoal(t));
      if (other === undefined) throw new RangeError('route: a vertex is not next to the last one');
      [first, gates, turn] = [other, [], []];
      at = other;
    }
    gates.push(...turn);
    if (turn.length > 0) at = triangleOfHalfedge(surface.topology.twin[turn[turn.length - 1]]);
    if (!isLast && !holds(at, next)) {
      const over = beyond(surface, at, v, next);
      gates.push(over);
      at = triangleOfHalfedge(surface.topology.twin[over]);
    }
  });
  legs.push({ from: start, to, first, gates });
  return legs.map((leg) => trimmed(surface, leg));
}

/** The side of triangle `t` across from vertex `v`, where the triangle beyond it has `next` for its corner; else -1. */
function beyond({ triangles, topology }: Surface, t: number, v: number, next: number): number {
  for (let h = 3 * t; h < 3 * t + 3; h += 1) {
    if (triangles[prevHalfedge(h)] !== v) continue;
    const across = topology.twin[h];
    if (across >= 0 && triangles[prevHalfedge(across)] === next) return h;
  }
  return -1;
}

/** Gates that turn about a vertex from a triangle to the nearest one that is wanted, to either side; null where there is none. */
function turnAbout(surface: Surface, from: number, v: number, isGoal: (t: number) => boolean): number[] | null {
  if (isGoal(from)) return [];
  const ways = [true, false].map((isLeft) => {
    const gates: number[] = [];
    for (const h of gatesAbout(surface, from, v, isLeft)) {
      gates.push(h);
      if (isGoal(triangleOfHalfedge(surface.topology.twin[h]))) return gates;
    }
    return null;
  });
  const [one, other] = ways;
  if (one === null || other === null) return one ?? other;
  return other.length < one.length ? other : one;
}

/** The gates one goes through round a vertex, beginning in triangle `from`, with the vertex on the left or on the right; once round at most. */
export function* gatesAbout(
  { triangles, topology }: Surface,
  from: number,
  v: number,
  isLeft: boolean,
): Generator<number, void, undefined> {
  let leaving = 3 * from;
  while (triangles[leaving] !== v) leaving += 1;
  // With the vertex on the left one leaves through the side that arrives at it, else through the one that leaves it.
  const first = isLeft ? prevHalfedge(leaving) : leaving;
  for (let h = first; ;) {
    const across = topology.twin[h];
    if (across < 0) return;
    yield h;
    h = isLeft ? prevHalfedge(across) : nextHalfedge(across);
    if (h === first) return;
  }
}

/** A leg without gates its ends lie on, and without steps back through a gate just passed. */
export function trimmed(surface: Surface, leg: Leg): Leg {
  const { topology } = surface;
  const gates: number[] = [];
  for (const h of leg.gates) {
    if (gates.length > 0 && topology.twin[gates[gates.length - 1]] === h) gates.pop();
    else gates.push(h);
  }
  const [starts, ends] = [trianglesAt(surface, leg.from), trianglesAt(surface, leg.to)];
  let skip = 0;
  let first = leg.first;
  // The last gate into a triangle that holds the start: whatever came before is not needed; so with the end.
  for (let i = gates.length - 1; i >= 0 && skip === 0; i -= 1) {
    const t = triangleOfHalfedge(topology.twin[gates[i]]);
    if (starts.includes(t)) [skip, first] = [i + 1, t];
  }
  let count = gates.length;
  for (let i = skip; i < gates.length; i += 1) {
    if (!ends.includes(triangleOfHalfedge(gates[i]))) continue;
    count = i;
    break;
  }
  return { from: leg.from, to: leg.to, first, gates: gates.slice(skip, count) };
}

/** Vertices whose ways are found in one stretch: a few milliseconds. */
const STRETCH_VERTICES = 1 << 12;

function* hopSteps(surface: Surface): Stepwise<Hops> {
  const { triangles, topology } = surface;
  const { length, foot, height } = sideShapesOf(surface);
  const { starts: cornerStarts, corners } = cornersOf(surface);
  const vertexCount = surface.positions.length / 3;
  const starts = new Uint32Array(vertexCount + 1);
  // Each corner has its edge, the triangle across it, and at the end of an open round one edge more.
  const [to, lengths] = [new Uint32Array(3 * corners.length), new Float64Array(3 * corners.length)];
  let count = 0;
  const add = (v: number, mm: number): void => {
    to[count] = v;
    lengths[count] = mm;
    count += 1;
  };
  yield* inStretches(vertexCount, STRETCH_VERTICES, (first, end) => {
    for (let v = first; v < end; v += 1) {
      for (let i = cornerStarts[v]; i < cornerStarts[v + 1]; i += 1) {
        const h = corners[i];
        const [opposite, last] = [nextHalfedge(h), prevHalfedge(h)];
        add(triangles[opposite], length[h]);
        // Every edge once: the one that arrives only where no triangle beyond tells of it.
        if (topology.twin[last] < 0) add(triangles[last], length[last]);
        const across = topology.twin[opposite];
        if (across < 0) continue;
        const [up, down] = [height[opposite], height[across]];
        const [x, y] = [foot[opposite], length[opposite] - foot[across]];
        const meets = x + ((y - x) * up) / (up + down);
        if (meets > 0 && meets < length[opposite]) add(triangles[prevHalfedge(across)], Math.hypot(y - x, up + down));
      }
      starts[v + 1] = count;
    }
  });
  return { starts, to: to.slice(0, count), length: lengths.slice(0, count) };
}
