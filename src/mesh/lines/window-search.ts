import { MinHeap } from '../../base/min-heap.ts';
import type { Stepwise } from '../../base/stepwise.ts';
import { length3, pointAt3, sub3, type Vec3 } from '../../geom/vec.ts';
import type { Surface } from '../surface.ts';
import { nextHalfedge, prevHalfedge, triangleOfHalfedge } from '../topology.ts';
import { cornersOf, placeOf, trianglesAt, weightsIn } from './mesh-point.ts';
import type { Leg } from './leg.ts';
import type { MeshPoint } from './mesh-line.ts';
import { isTurningVertex } from './turning-vertices.ts';
import { sideShapesOf, type SideShapes } from './side-shapes.ts';
import { meets, servedUntil } from './window-shape.ts';
import { WindowStore } from './window-store.ts';

/** What a search found. */
export interface ShortestWay {
  /** mm; Infinity where no way is shorter than what was asked for. */
  readonly distance: number;
  /** Straight legs that meet in corners; empty where none was found. */
  readonly legs: readonly Leg[];
  /** How many windows it took. */
  readonly windows: number;
  /** False where the search was given up for their number: then a shorter way may exist. */
  readonly isComplete: boolean;
}

/** Share of a side under which a window is too narrow to matter: a way through it differs by its square. */
const NARROW_SHARE = 1e-10;
/** Most windows of one search, some 200 MB: on a sculpt of 60,000 triangles the farthest pairs take under two millions. */
const MOST_WINDOWS = 4_000_000;
/** Windows worked off in one stretch: a few milliseconds. */
const STRETCH_WINDOWS = 1 << 13;
/** How a vertex was come to: not yet, from the start in one triangle, or as `-3 - u` along the edge from vertex u; else by a window. */
const NOT_YET = -1;
const FROM_START = -2;

/**
 * The shortest of all ways over a surface from one point to another, exact to rounding: distance is carried outward in windows, nearest
 * first (Mitchell, Mount and Papadimitriou, "The discrete geodesic problem", 1987; order and filter after Xin and Wang, "Improving Chen and
 * Han's algorithm on the discrete geodesic problem", 2009). A window is cut back where going by one of the ends of its side is shorter, and
 * left out where the straight line from it to the goal makes the way longer than what is known. Corners with more than a full turn round them, and
 * those of open edges, send out windows of their own.
 * @param most         ways of this length or longer, mm, are not looked for: the length of a known way saves most of the work.
 * @param mostWindows  the search is given up where it takes more.
 */
export function* shortestWaySteps(
  surface: Surface,
  from: MeshPoint,
  to: MeshPoint,
  most = Infinity,
  mostWindows = MOST_WINDOWS,
): Stepwise<ShortestWay> {
  const search = new WindowSearch(surface, from, to, most, mostWindows);
  for (let steps = 1; search.step(); steps += 1) if (steps % STRETCH_WINDOWS === 0) yield;
  return search.found();
}

class WindowSearch {
  readonly #surface: Surface;
  readonly #shapes: SideShapes;
  readonly #from: MeshPoint;
  readonly #to: MeshPoint;
  readonly #goal: Vec3;
  readonly #isGoalTriangle: ReadonlySet<number>;
  /** Straight way from each vertex of a triangle that holds the goal. */
  readonly #lastWay = new Map<number, number>();
  readonly #distance: Float64Array;
  readonly #cameBy: Int32Array;
  readonly #windows = new WindowStore();
  readonly #queue = new MinHeap();
  readonly #mostWindows: number;
  #best: number;
  /** The window, or `-3 - v` for the vertex v, the best way ends through; {@link FROM_START} for a straight one; {@link NOT_YET} for none. */
  #bestBy = NOT_YET;

  constructor(surface: Surface, from: MeshPoint, to: MeshPoint, most: number, mostWindows: number) {
    this.#surface = surface;
    this.#shapes = sideShapesOf(surface);
    this.#from = from;
    this.#to = to;
    this.#best = most;
    this.#mostWindows = mostWindows;
    this.#goal = placeOf(surface, to);
    const { positions, triangles } = surface;
    const vertexCount = positions.length / 3;
    this.#distance = new Float64Array(vertexCount).fill(Infinity);
    this.#cameBy = new Int32Array(vertexCount).fill(NOT_YET);
    const ends = trianglesAt(surface, to);
    this.#isGoalTriangle = new Set(ends);
    for (const t of ends)
      for (const v of triangles.subarray(3 * t, 3 * t + 3))
        this.#lastWay.set(v, length3(sub3(pointAt3(positions, v), this.#goal)));
    const start = placeOf(surface, from);
    const starts = trianglesAt(surface, from);
    if (starts.some((t) => this.#isGoalTriangle.has(t))) this.#offerGoal(length3(sub3(start, this.#goal)), FROM_START);
    for (const t of starts) this.#sendFrom(t, start);
  }

  /** Works off the nearest window or vertex; false where nothing is left that could be shorter than the best way. */
  step(): boolean {
    if (this.#queue.size === 0) return false;
    const { key, item } = this.#queue.pop();
    if (key >= this.#best || this.#isFull()) return false;
    if (item >= 0) this.#passOn(item);
    else if (key <= this.#distance[-1 - item]) this.#sendFromVertex(-1 - item);
    return true;
  }

  #isFull(): boolean {
    return this.#windows.count >= this.#mostWindows;
  }

  found(): ShortestWay {
    const known = { windows: this.#windows.count, isComplete: !this.#isFull() };
    return this.#bestBy === NOT_YET
      ? { distance: Infinity, legs: [], ...known }
      : { distance: this.#best, legs: this.#legs(), ...known };
  }

  /** Windows on the sides of the first triangles the start does not lie on. */
  #sendFrom(t: number, start: Vec3): void {
    const { positions, triangles, topology } = this.#surface;
    const weights = weightsIn(topology, triangles, this.#from, t);
    if (weights === null) return;
    for (let k = 0; k < 3; k += 1) {
      const v = triangles[3 * t + k];
      this.#offerVertex(v, length3(sub3(pointAt3(positions, v), start)), FROM_START);
      const gate = 3 * t + k;
      // The corner across side k is k + 2: without weight there the start lies on the side itself.
      const across = weights[(k + 2) % 3];
      if (across === 0 || topology.twin[gate] < 0) continue;
      const { length, foot, height } = this.#shapes;
      const along = weights[(k + 1) % 3] * length[gate] + across * foot[gate];
      this.#add(gate, 0, length[gate], length[gate] - along, across * height[gate], 0, -1 - this.#distance.length);
    }
  }

  #sendFromVertex(v: number): void {
    const { triangles, topology } = this.#surface;
    const { length, foot, height } = this.#shapes;
    const { starts, corners } = cornersOf(this.#surface);
    const here = this.#distance[v];
    for (let i = starts[v]; i < starts[v + 1]; i += 1) {
      const h = corners[i];
      const gate = nextHalfedge(h);
      this.#offerVertex(triangles[gate], here + length[h], -3 - v);
      this.#offerVertex(triangles[prevHalfedge(h)], here + length[prevHalfedge(h)], -3 - v);
      if (topology.twin[gate] >= 0)
        this.#add(gate, 0, length[gate], length[gate] - foot[gate], height[gate], here, -1 - v);
    }
  }

  #offerVertex(v: number, distance: number, by: number): void {
    if (!(distance < this.#distance[v])) return;
    this.#distance[v] = distance;
    this.#cameBy[v] = by;
    const rest = this.#lastWay.get(v);
    if (rest !== undefined) this.#offerGoal(distance + rest, -3 - v);
    if (isTurningVertex(this.#surface, v) && distance < this.#best) this.#queue.push(distance, -1 - v);
  }

  #offerGoal(distance: number, by: number): void {
    if (!(distance < this.#best)) return;
    this.#best = distance;
    this.#bestBy = by;
  }

  /** Cuts a window back to what its side's ends do not serve better, and queues it where it may still lead to a shorter way. */
  #add(gate: number, near: number, far: number, x: number, y: number, offset: number, parent: number): void {
    const { triangles, topology, positions } = this.#surface;
    const back = topology.twin[gate];
    const size = this.#shapes.length[gate];
    const [v, w] = [triangles[back], triangles[nextHalfedge(back)]];
    const from = Math.max(near, servedUntil(this.#distance[v] - offset, x, y));
    const until = Math.min(far, size - servedUntil(this.#distance[w] - offset, size - x, y));
    if (!(until - from > NARROW_SHARE * size)) return;
    const closest = x < from ? Math.hypot(from - x, y) : x > until ? Math.hypot(x - until, y) : y;
    const key = offset + closest;
    // The goal is no nearer than in space.
    const middle = (from + until) / (2 * size);
    const gap = ([a, b]: [number, number], axis: number, goal: number): number =>
      positions[3 * a + axis] + middle * (positions[3 * b + axis] - positions[3 * a + axis]) - goal;
    const toGoal = Math.hypot(gap([v, w], 0, this.#goal.x), gap([v, w], 1, this.#goal.y), gap([v, w], 2, this.#goal.z));
    if (key + toGoal - (until - from) / 2 >= this.#best) return;
    const window = this.#windows.add(gate, from, until, x, y, offset, parent);
    if (this.#isGoalTriangle.has(triangleOfHalfedge(back))) this.#offerThrough(window, back);
    this.#queue.push(key, window);
  }

  /** The way through a window to the goal in the triangle behind it: straight, or by the window's end. */
  #offerThrough(window: number, back: number): void {
    const { triangles, topology } = this.#surface;
    const weights = weightsIn(topology, triangles, this.#to, triangleOfHalfedge(back));
    if (weights === null) return;
    const { near, far, x, y, offset } = this.#windows;
    const k = back % 3;
    const across = weights[(k + 2) % 3];
    const gx = weights[(k + 1) % 3] * this.#shapes.length[back] + across * this.#shapes.foot[back];
    const gy = across * this.#shapes.height[back];
    const [sx, sy] = [x[window], y[window]];
    const straight = sy + gy > 0 ? sx + ((gx - sx) * sy) / (sy + gy) : gx;
    const through = Math.min(far[window], Math.max(near[window], straight));
    this.#offerGoal(offset[window] + Math.hypot(through - sx, sy) + Math.hypot(gx - through, gy), window);
  }

  /** Carries a window over the triangle behind it onto the two other sides. */
  #passOn(window: number): void {
    const { triangles, topology } = this.#surface;
    const { length, foot, height } = this.#shapes;
    const store = this.#windows;
    const [near, far] = [store.near[window], store.far[window]];
    const [x, y, offset] = [store.x[window], store.y[window], store.offset[window]];
    const back = topology.twin[store.gate[window]];
    const [size, cx, cy] = [length[back], foot[back], height[back]];
    // On which side of the two rays the corner stands: the rays go from (x, -y) through (near, 0) and (far, 0).
    const ofNear = (near - x) * (cy + y) - y * (cx - x);
    const ofFar = (far - x) * (cy + y) - y * (cx - x);
    // ofNear > 0: the corner lies beyond the near ray on the outside, all of the window comes out on the side to the right of it.
    const room = NARROW_SHARE * size * (cy + y);
    if (ofNear <= room && ofFar >= -room)
      this.#offerVertex(triangles[prevHalfedge(back)], offset + Math.hypot(cx - x, cy + y), window);
    const right = nextHalfedge(back);
    const left = prevHalfedge(back);
    if (ofFar > 0 && topology.twin[right] >= 0) {
      // From (size, 0) to the corner; the twin counts from the corner.
      const share = (ray: number): number => meets(x, y, ray, size, cx - size, cy);
      const [from, until] = [ofNear > 0 ? 1 - share(near) : 0, 1 - share(far)];
      const span = length[right];
      this.#addTurned(right, from * span, until * span, x, y, offset, window, cx, cy, (size - cx) / span, -cy / span);
    }
    if (ofNear < 0 && topology.twin[left] >= 0) {
      // From the corner to (0, 0); the twin counts from (0, 0).
      const share = (ray: number): number => meets(x, y, ray, 0, cx, cy);
      const [from, until] = [share(near), ofFar < 0 ? share(far) : 1];
      const span = length[left];
      this.#addTurned(left, from * span, until * span, x, y, offset, window, 0, 0, cx / span, cy / span);
    }
  }

  /** Adds a window whose source stands at (x, -y) in a frame where the gate's twin starts at (ox, oy) and runs along (ux, uy). */
  #addTurned(
    gate: number,
    near: number,
    far: number,
    x: number,
    y: number,
    offset: number,
    parent: number,
    ox: number,
    oy: number,
    ux: number,
    uy: number,
  ): void {
    const [dx, dy] = [x - ox, -y - oy];
    this.#add(gate, near, far, dx * ux + dy * uy, Math.max(0, dx * uy - dy * ux), offset, parent);
  }

  /** The best way from its end back to the start. */
  #legs(): Leg[] {
    const { gate, parent } = this.#windows;
    const { triangles } = this.#surface;
    const legs: Leg[] = [];
    let end = this.#to;
    let by = this.#bestBy;
    for (;;) {
      if (by >= 0) {
        const gates: number[] = [];
        let window = by;
        for (; window >= 0; window = parent[window]) gates.push(gate[window]);
        const source = -1 - window;
        const isStart = source === this.#distance.length;
        const from: MeshPoint = isStart ? this.#from : { at: 'vertex', vertex: source };
        gates.reverse();
        legs.push({ from, to: end, first: triangleOfHalfedge(gates[0]), gates });
        if (isStart) break;
        end = from;
        by = this.#cameBy[source];
      } else {
        const from: MeshPoint = by === FROM_START ? this.#from : { at: 'vertex', vertex: -3 - by };
        const first = trianglesAt(this.#surface, end).find(
          (t) => weightsIn(this.#surface.topology, triangles, from, t) !== null,
        );
        if (first === undefined) throw new Error('windows: a step along an edge without a triangle');
        legs.push({ from, to: end, first, gates: [] });
        if (by === FROM_START) break;
        end = from;
        by = this.#cameBy[-3 - by];
      }
    }
    return legs.reverse();
  }
}
