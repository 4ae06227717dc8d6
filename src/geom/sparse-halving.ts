import { runAtOnce, type Stepwise } from '../base/stepwise.ts';
import type { SparseGraph } from './sparse-graph.ts';

/** Parts of up to this many nodes are not halved any more. */
const SMALL_PART = 8;
/** From this many nodes on a part is halved across its widest and its second widest spread, and the thinner cut is taken. */
const WORTH_TWO_TRIES = 500;
/** Beside a cut of more nodes than this the fewest that part the halves are not looked for. */
const MOST_MATCHED = 5000;
/** Nodes gone through between two pauses: a few milliseconds. */
const PAUSE_NODES = 20_000;

/**
 * An order of elimination for the graph of a mesh whose nodes lie in space: nested dissection (George, "Nested dissection of a regular
 * finite element mesh", 1973) with cuts across the widest spread of coordinates (Heath and Raghavan, "A Cartesian parallel nested
 * dissection algorithm", 1995). A few nodes that part the graph in two halves come last, and the halves are ordered the same way.
 * Of all nodes that meet the edges between the halves the fewest are taken (König: as many as a largest matching has edges).
 * @param points  x y z per node; any unit. Nodes after the last point (hubs that meet many others) come last of all. Wrong points make a
 *                poor order, never a wrong one.
 * @returns the nodes in the order in which to eliminate them.
 */
export function halvingOrder(graph: SparseGraph, points: Float64Array): Int32Array {
  return runAtOnce(halvingSteps(graph, points));
}

/** The same in stretches. */
export function* halvingSteps(graph: SparseGraph, points: Float64Array): Stepwise<Int32Array> {
  const halving = new Halving(graph, points);
  let done = 0;
  while (halving.hasParts()) {
    done += yield* halving.orderNext();
    if (done < PAUSE_NODES) continue;
    done = 0;
    yield;
  }
  return halving.order;
}

class Halving {
  readonly order: Int32Array;
  readonly #graph: SparseGraph;
  readonly #points: Float64Array;
  /** All nodes; each part is a run of them. */
  readonly #nodes: Int32Array;
  readonly #room: Int32Array;
  /** First node, end and end in the order of the parts that wait. */
  readonly #parts: number[] = [];
  /** Number of the half each node lies in now; 0 for separators. */
  readonly #half: Int32Array;
  #halves = 0;
  readonly #key: Float64Array;
  readonly #mate: Int32Array;
  readonly #mark: Int32Array;
  #marks = 0;

  constructor(graph: SparseGraph, points: Float64Array) {
    const { size } = graph;
    const placed = Math.min(size, Math.floor(points.length / 3));
    this.#graph = graph;
    this.#points = points;
    this.order = Int32Array.from({ length: size }, (_, v) => v);
    this.#nodes = this.order.slice();
    this.#room = new Int32Array(size);
    this.#half = new Int32Array(size);
    this.#key = new Float64Array(size);
    this.#mate = new Int32Array(size).fill(-1);
    this.#mark = new Int32Array(size);
    this.#parts.push(0, placed, placed);
  }

  hasParts(): boolean {
    return this.#parts.length > 0;
  }

  /** Halves or orders the next part; returns how many nodes it has. */
  *orderNext(): Stepwise<number> {
    const [from, to, last] = this.#parts.splice(-3);
    const nodes = this.#nodes;
    if (to - from <= SMALL_PART) {
      this.order.set(nodes.subarray(from, to), last - (to - from));
      return to - from;
    }
    const middle = yield* this.#halve(from, to);
    const [first, second] = [(this.#halves += 1), (this.#halves += 1)];
    for (let i = from; i < middle; i += 1) this.#half[nodes[i]] = first;
    for (let i = middle; i < to; i += 1) this.#half[nodes[i]] = second;
    if (to - from > PAUSE_NODES) yield;
    const separator = this.#separator(from, middle, second);
    if (to - from > PAUSE_NODES) yield;
    for (const v of separator) this.#half[v] = 0;
    this.order.set(separator, last - separator.length);
    const [left, right] = this.#dealOut(from, to, first);
    this.#parts.push(from, from + left, last - separator.length - right);
    this.#parts.push(from + left, from + left + right, last - separator.length);
    return to - from;
  }

  /** Brings the half that lies lower across the better of the widest spreads to the front; returns where the other begins. */
  *#halve(from: number, to: number): Stepwise<number> {
    const isLarge = to - from > PAUSE_NODES;
    const [widest, next] = this.#axesBySpread(from, to);
    if (isLarge) yield;
    const middle = this.#splitAcross(from, to, widest);
    if (to - from < WORTH_TWO_TRIES) return middle;
    if (isLarge) yield;
    const first = this.#borderCount(from, middle, to);
    if (isLarge) yield;
    this.#splitAcross(from, to, next);
    if (isLarge) yield;
    const second = this.#borderCount(from, middle, to);
    if (isLarge) yield;
    if (second > first) this.#splitAcross(from, to, widest);
    return middle;
  }

  #axesBySpread(from: number, to: number): number[] {
    const points = this.#points;
    const spread = [0, 1, 2].map((axis) => {
      let least = Infinity;
      let most = -Infinity;
      for (let i = from; i < to; i += 1) {
        const x = points[3 * this.#nodes[i] + axis];
        if (x < least) least = x;
        if (x > most) most = x;
      }
      return most - least;
    });
    return [0, 1, 2].sort((a, b) => spread[b] - spread[a] || a - b);
  }

  /** Hoare's selection: the lower half of the part by one coordinate comes first. */
  #splitAcross(from: number, to: number, axis: number): number {
    const nodes = this.#nodes;
    const key = this.#key;
    for (let i = from; i < to; i += 1) key[nodes[i]] = this.#points[3 * nodes[i] + axis];
    const middle = (from + to) >> 1;
    let low = from;
    let high = to - 1;
    while (low < high) {
      const pivot = key[nodes[(low + high) >> 1]];
      let i = low;
      let j = high;
      while (i <= j) {
        while (key[nodes[i]] < pivot) i += 1;
        while (key[nodes[j]] > pivot) j -= 1;
        if (i > j) break;
        const swapped = nodes[i];
        nodes[i] = nodes[j];
        nodes[j] = swapped;
        i += 1;
        j -= 1;
      }
      if (middle <= j) high = j;
      else if (middle >= i) low = i;
      else break;
    }
    return middle;
  }

  /** How many nodes of the first half have a neighbour in the second. */
  #borderCount(from: number, middle: number, to: number): number {
    const { starts, neighbours } = this.#graph;
    const [nodes, mark] = [this.#nodes, this.#mark];
    const now = (this.#marks += 1);
    for (let i = middle; i < to; i += 1) mark[nodes[i]] = now;
    let count = 0;
    for (let i = from; i < middle; i += 1) {
      const v = nodes[i];
      let p = starts[v];
      while (p < starts[v + 1] && mark[neighbours[p]] !== now) p += 1;
      if (p < starts[v + 1]) count += 1;
    }
    return count;
  }

  /** The fewest nodes that meet every edge from `nodes[from .. middle)` to the half `second`. */
  #separator(from: number, middle: number, second: number): number[] {
    const { starts, neighbours } = this.#graph;
    const [half, mate, mark] = [this.#half, this.#mate, this.#mark];
    const border: number[] = [];
    for (let i = from; i < middle; i += 1) {
      const v = this.#nodes[i];
      let p = starts[v];
      while (p < starts[v + 1] && half[neighbours[p]] !== second) p += 1;
      if (p < starts[v + 1]) border.push(v);
    }
    if (border.length > MOST_MATCHED) return border;
    for (const v of border) {
      this.#marks += 1;
      this.#augment(v, second);
    }
    // From every unmatched node: nodes of the border reached this way stay out, nodes beyond it are taken (König's cover).
    const now = (this.#marks += 1);
    const reached = border.filter((v) => mate[v] < 0);
    for (const v of reached) mark[v] = now;
    const beyond: number[] = [];
    for (let k = 0; k < reached.length; k += 1) {
      const v = reached[k];
      for (let p = starts[v]; p < starts[v + 1]; p += 1) {
        const w = neighbours[p];
        if (half[w] !== second || mark[w] === now) continue;
        mark[w] = now;
        beyond.push(w);
        const other = mate[w];
        if (other < 0 || mark[other] === now) continue;
        mark[other] = now;
        reached.push(other);
      }
    }
    const kept = border.filter((v) => mark[v] !== now);
    for (const v of border) {
      if (mate[v] >= 0) mate[mate[v]] = -1;
      mate[v] = -1;
    }
    return [...kept, ...beyond];
  }

  /** Looks for a way to give `v` a mate beyond the border, moving others to other mates where needed. */
  #augment(v: number, second: number): boolean {
    const { starts, neighbours } = this.#graph;
    const [half, mate, mark] = [this.#half, this.#mate, this.#mark];
    for (let p = starts[v]; p < starts[v + 1]; p += 1) {
      const w = neighbours[p];
      if (half[w] !== second || mark[w] === this.#marks) continue;
      mark[w] = this.#marks;
      if (mate[w] < 0 || this.#augment(mate[w], second)) {
        mate[w] = v;
        mate[v] = w;
        return true;
      }
    }
    return false;
  }

  /** Puts the two halves without the separator side by side; returns how many nodes each has. */
  #dealOut(from: number, to: number, first: number): [number, number] {
    const [nodes, half, room] = [this.#nodes, this.#half, this.#room];
    let left = 0;
    let right = 0;
    for (let i = from; i < to; i += 1) {
      const v = nodes[i];
      if (half[v] === first) nodes[from + left++] = v;
      else if (half[v] !== 0) room[right++] = v;
    }
    nodes.set(room.subarray(0, right), from + left);
    return [left, right];
  }
}
