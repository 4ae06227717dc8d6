import { graphOfPairs, type SparseGraph } from './sparse-graph.ts';
import { minimumDegreeOrder } from './sparse-min-degree.ts';

/** Parts of up to this many nodes are ordered by minimum degree. */
const SMALL_PART = 120;
const EVEN_OUT_ROUNDS = 4;
const LEAST_SHARE = 0.25;
const BALANCE_PRICE = 2;

/**
 * An order of elimination for large meshes: nested dissection (George, "Nested dissection of a regular finite element mesh", 1973). A
 * few nodes that part the graph in two halves come last; the halves are ordered the same way, small ones by minimum degree.
 *
 * The line of parting is taken half way between two nodes far apart: every node goes to the one that is nearer in steps, with as many on
 * either side. Of the edges that then join both sides the fewest nodes that meet all of them are the separator (König: as many as a
 * largest matching has edges).
 * @returns the nodes in the order in which to eliminate them.
 */
export function dissectionOrder(graph: SparseGraph): Int32Array {
  const work = new Dissection(graph);
  work.part(0, graph.size);
  return work.nodes;
}

class Dissection {
  readonly nodes: Int32Array;
  readonly #graph: SparseGraph;
  /** Which run of `nodes` each node lies in: two nodes see each other only inside one run. */
  readonly #run: Int32Array;
  #runs = 0;
  readonly #fromFirst: Int32Array;
  readonly #fromSecond: Int32Array;
  readonly #queue: Int32Array;
  readonly #side: Uint8Array;
  readonly #mate: Int32Array;
  readonly #mark: Int32Array;
  #marks = 0;
  readonly #local: Int32Array;
  readonly #key: Float64Array;
  readonly #nextKey: Float64Array;

  constructor(graph: SparseGraph) {
    const n = graph.size;
    this.#graph = graph;
    this.nodes = Int32Array.from({ length: n }, (_, i) => i);
    this.#run = new Int32Array(n);
    this.#fromFirst = new Int32Array(n);
    this.#fromSecond = new Int32Array(n);
    this.#queue = new Int32Array(n);
    this.#side = new Uint8Array(n);
    this.#mate = new Int32Array(n).fill(-1);
    this.#mark = new Int32Array(n).fill(-1);
    this.#local = new Int32Array(n);
    this.#key = new Float64Array(n);
    this.#nextKey = new Float64Array(n);
  }

  /** Orders the nodes of `nodes[from .. to)`, which all lie in one run. */
  part(from: number, to: number): void {
    const pending: [number, number][] = [[from, to]];
    for (let next = pending.pop(); next !== undefined; next = pending.pop()) {
      const [start, end] = next;
      if (end - start <= SMALL_PART) {
        this.#orderSmall(start, end);
        continue;
      }
      const [first, second] = this.#halve(start, end);
      pending.push([start, first], [first, second]);
    }
  }

  /** Brings one half, the other half and the separator of `nodes[start .. end)` into this order; returns where the second and the third begin. */
  #halve(start: number, end: number): [number, number] {
    const { nodes } = this;
    const count = end - start;
    const reached = this.#spread(nodes[start], this.#fromFirst);
    if (reached < count) return this.#partFallen(start, end, reached);
    const first = this.#queue[count - 1];
    this.#spread(first, this.#fromFirst);
    const second = this.#queue[count - 1];
    this.#spread(second, this.#fromSecond);
    this.#sortByNearness(start, end);
    const middle = this.#bestSplit(start, end);
    for (let i = start; i < end; i += 1) this.#side[nodes[i]] = i < middle ? 0 : 1;
    this.#markSeparator(start, middle);
    return this.#settle(start, end);
  }

  /** Steps to every node of the run; returns how many were reached, in `#queue`, nearest first. */
  #spread(source: number, steps: Int32Array): number {
    const { starts, neighbours } = this.#graph;
    const queue = this.#queue;
    const mark = this.#mark;
    const run = this.#run;
    const now = (this.#marks += 1);
    const mine = run[source];
    let tail = 1;
    queue[0] = source;
    steps[source] = 0;
    mark[source] = now;
    for (let head = 0; head < tail; head += 1) {
      const v = queue[head];
      for (let p = starts[v]; p < starts[v + 1]; p += 1) {
        const w = neighbours[p];
        if (run[w] !== mine || mark[w] === now) continue;
        mark[w] = now;
        steps[w] = steps[v] + 1;
        queue[tail++] = w;
      }
    }
    return tail;
  }

  /** The run is not in one piece: what was reached is one part, the rest the other, nothing between them. */
  #partFallen(start: number, end: number, reached: number): [number, number] {
    const { nodes } = this;
    const now = this.#marks;
    const mark = this.#mark;
    const others = nodes.slice(start, end).filter((v) => mark[v] !== now);
    nodes.set(this.#queue.subarray(0, reached), start);
    nodes.set(others, start + reached);
    this.#name(start, start + reached);
    this.#name(start + reached, end);
    return [start + reached, end];
  }

  /** Sorts the run by how much nearer the first far node is than the second, evened out among neighbours so that the front is straight. */
  #sortByNearness(start: number, end: number): void {
    const { starts, neighbours } = this.#graph;
    const { nodes } = this;
    const run = this.#run;
    let key = this.#key;
    let next = this.#nextKey;
    for (let i = start; i < end; i += 1) key[nodes[i]] = this.#fromFirst[nodes[i]] - this.#fromSecond[nodes[i]];
    for (let round = 0; round < EVEN_OUT_ROUNDS; round += 1) {
      for (let i = start; i < end; i += 1) {
        const v = nodes[i];
        let sum = 2 * key[v];
        let count = 2;
        for (let p = starts[v]; p < starts[v + 1]; p += 1) {
          if (run[neighbours[p]] !== run[v]) continue;
          sum += key[neighbours[p]];
          count += 1;
        }
        next[v] = sum / count;
      }
      [key, next] = [next, key];
    }
    nodes.subarray(start, end).sort((v, w) => key[v] - key[w] || v - w);
  }

  /** Where to part the sorted run so that few of the left have a neighbour on the right, neither side being much the smaller. */
  #bestSplit(start: number, end: number): number {
    const { starts, neighbours } = this.#graph;
    const { nodes } = this;
    const [run, right] = [this.#run, this.#fromFirst];
    const count = end - start;
    for (let i = start; i < end; i += 1) {
      const v = nodes[i];
      let own = 0;
      for (let p = starts[v]; p < starts[v + 1]; p += 1) if (run[neighbours[p]] === run[v]) own += 1;
      right[v] = own;
      this.#side[v] = 1;
    }
    let border = 0;
    let best = start + (count >> 1);
    let least = Infinity;
    for (let i = start; i < end; i += 1) {
      const v = nodes[i];
      this.#side[v] = 0;
      if (right[v] > 0) border += 1;
      for (let p = starts[v]; p < starts[v + 1]; p += 1) {
        const w = neighbours[p];
        if (run[w] !== run[v]) continue;
        right[w] -= 1;
        if (this.#side[w] === 0 && right[w] === 0) border -= 1;
      }
      const left = i + 1 - start;
      const balance = (2 * left) / count - 1;
      const cost = border * (1 + BALANCE_PRICE * balance * balance);
      if (cost < least && left >= LEAST_SHARE * count && left <= (1 - LEAST_SHARE) * count) {
        least = cost;
        best = i + 1;
      }
    }
    return best;
  }

  /** Marks with side 2 the fewest nodes that meet every edge between the sides. */
  #markSeparator(start: number, middle: number): void {
    const { starts, neighbours } = this.#graph;
    const [run, side, mate, mark] = [this.#run, this.#side, this.#mate, this.#mark];
    const border: number[] = [];
    for (let i = start; i < middle; i += 1) {
      const v = this.nodes[i];
      for (let p = starts[v]; p < starts[v + 1]; p += 1) {
        if (run[neighbours[p]] === run[v] && side[neighbours[p]] === 1) {
          border.push(v);
          break;
        }
      }
    }
    for (const v of border) {
      this.#marks += 1;
      this.#augment(v);
    }
    // From every unmatched node of the left: left nodes reached this way stay out, right nodes reached are taken (König's cover).
    const reached: number[] = [];
    this.#marks += 1;
    const now = this.#marks;
    for (const v of border) {
      if (mate[v] >= 0) continue;
      mark[v] = now;
      reached.push(v);
    }
    const covered: number[] = [];
    for (let k = 0; k < reached.length; k += 1) {
      const v = reached[k];
      for (let p = starts[v]; p < starts[v + 1]; p += 1) {
        const w = neighbours[p];
        if (run[w] !== run[v] || side[w] !== 1 || mark[w] === now) continue;
        mark[w] = now;
        covered.push(w);
        const next = mate[w];
        if (next < 0 || mark[next] === now) continue;
        mark[next] = now;
        reached.push(next);
      }
    }
    const left = border.filter((v) => mark[v] !== now);
    for (const v of border) {
      if (mate[v] >= 0) mate[mate[v]] = -1;
      mate[v] = -1;
    }
    for (const w of covered) side[w] = 2;
    for (const v of left) side[v] = 2;
  }

  /** Looks for a way to give `v` a mate on the other side, moving others to other mates where needed. */
  #augment(v: number): boolean {
    const { starts, neighbours } = this.#graph;
    const [run, side, mate, mark] = [this.#run, this.#side, this.#mate, this.#mark];
    for (let p = starts[v]; p < starts[v + 1]; p += 1) {
      const w = neighbours[p];
      if (run[w] !== run[v] || side[w] !== 1 || mark[w] === this.#marks) continue;
      mark[w] = this.#marks;
      if (mate[w] < 0 || this.#augment(mate[w])) {
        mate[w] = v;
        mate[v] = w;
        return true;
      }
    }
    return false;
  }

  /** Sorts the run by side and gives each side a run of its own. */
  #settle(start: number, end: number): [number, number] {
    const { nodes } = this;
    const side = this.#side;
    const all = nodes.slice(start, end);
    const counts = [0, 0, 0];
    for (const v of all) counts[side[v]] += 1;
    const put = [start, start + counts[0], start + counts[0] + counts[1]];
    for (const v of all) nodes[put[side[v]]++] = v;
    const first = start + counts[0];
    const second = first + counts[1];
    this.#name(start, first);
    this.#name(first, second);
    this.#name(second, end);
    return [first, second];
  }

  #name(from: number, to: number): void {
    this.#runs += 1;
    for (let i = from; i < to; i += 1) this.#run[this.nodes[i]] = this.#runs;
  }

  /** By minimum degree, the nodes of separators round about counting as neighbours that stay. */
  #orderSmall(start: number, end: number): void {
    const { starts, neighbours } = this.#graph;
    const { nodes } = this;
    const [run, local, mark] = [this.#run, this.#local, this.#mark];
    const now = (this.#marks += 1);
    const count = end - start;
    const group = Array.from(nodes.subarray(start, end));
    for (let i = 0; i < count; i += 1) {
      local[group[i]] = i;
      mark[group[i]] = now;
    }
    const pairs: number[] = [];
    for (let i = 0; i < count; i += 1) {
      const v = group[i];
      for (let p = starts[v]; p < starts[v + 1]; p += 1) {
        const w = neighbours[p];
        if (run[w] === run[v] && w > v) continue;
        if (mark[w] !== now) {
          mark[w] = now;
          local[w] = group.length;
          group.push(w);
        }
        pairs.push(i, local[w]);
      }
    }
    const order = minimumDegreeOrder(graphOfPairs(group.length, pairs), count);
    for (let i = 0; i < count; i += 1) nodes[start + i] = group[order[i]];
  }
}
