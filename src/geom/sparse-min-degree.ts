import type { SparseGraph } from './sparse-graph.ts';

/**
 * An order of elimination that keeps the factor of a sparse symmetric matrix thin: always the unknown with (about) the fewest
 * neighbours next. Amestoy, Davis and Duff, "An approximate minimum degree ordering algorithm" (1996): the growing clique of each
 * eliminated unknown is kept as one element, unknowns with the same neighbours travel as one, and degrees are bounded from the sizes of
 * the elements instead of being counted.
 * @param count  how many nodes to order, 0 to count - 1; the others are known to be eliminated later and only fill up their neighbours.
 * @returns those nodes in the order in which to eliminate them.
 */
export function minimumDegreeOrder(graph: SparseGraph, count = graph.size): Int32Array {
  const state = new Quotient(graph, count);
  while (state.eliminated < count) state.eliminateNext();
  return state.order();
}

/** The quotient graph: live unknowns with lists of elements and unknowns, live elements with lists of unknowns. */
class Quotient {
  eliminated = 0;
  readonly #size: number;
  /** Nodes from this one on stay to the end. */
  readonly #count: number;
  /** One pool for all lists; list of node i is `#pool[#from[i] .. #from[i] + #length[i])`, an unknown's elements first. */
  #pool: Int32Array;
  #free: number;
  readonly #from: Int32Array;
  readonly #length: Int32Array;
  readonly #elements: Int32Array;
  /** How many unknowns a node stands for; 0 when it is an element or was absorbed, negative while it lies in the newest element. */
  readonly #weight: Int32Array;
  /** Bound on the weight of an unknown's neighbours; for an element the weight of its list. */
  readonly #degree: Int32Array;
  /** Unknowns by degree, as doubly linked lists. */
  readonly #head: Int32Array;
  readonly #next: Int32Array;
  readonly #previous: Int32Array;
  #least = 0;
  /** For elements: 0 dead, else `#flag` + weight of the part outside the newest element. For unknowns only a mark. */
  readonly #seen: Int32Array;
  #flag = 2;
  #largest = 0;
  /** Unknowns by hash of their lists, while twins are looked for. */
  readonly #bucketHead: Int32Array;
  readonly #bucketNext: Int32Array;
  readonly #hash: Int32Array;
  /** Unknowns that follow a node out, as a linked list. */
  readonly #nextMember: Int32Array;
  readonly #lastMember: Int32Array;
  readonly #pivots: Int32Array;
  #pivotCount = 0;

  constructor(graph: SparseGraph, count: number) {
    const n = graph.size;
    this.#size = n;
    this.#count = count;
    this.#pool = new Int32Array(graph.neighbours.length + (graph.neighbours.length >> 1) + 4 * n + 64);
    this.#pool.set(graph.neighbours);
    this.#free = graph.neighbours.length;
    this.#from = graph.starts.slice(0, n);
    this.#length = new Int32Array(n);
    this.#elements = new Int32Array(n);
    this.#weight = new Int32Array(n).fill(1);
    this.#degree = new Int32Array(n);
    this.#head = new Int32Array(n + 1).fill(-1);
    this.#next = new Int32Array(n).fill(-1);
    this.#previous = new Int32Array(n).fill(-1);
    this.#seen = new Int32Array(n).fill(1);
    this.#bucketHead = new Int32Array(n).fill(-1);
    this.#bucketNext = new Int32Array(n).fill(-1);
    this.#hash = new Int32Array(n);
    this.#nextMember = new Int32Array(n).fill(-1);
    this.#lastMember = Int32Array.from({ length: n }, (_, i) => i);
    this.#pivots = new Int32Array(n);
    for (let i = n - 1; i >= 0; i -= 1) {
      this.#length[i] = graph.starts[i + 1] - graph.starts[i];
      this.#degree[i] = this.#length[i];
      this.#enlist(i);
    }
  }

  /** Pivots in order, each followed by the unknowns that were found to be its twins or to have no other neighbours. */
  order(): Int32Array {
    const order = new Int32Array(this.#count);
    let at = 0;
    for (let k = 0; k < this.#pivotCount; k += 1) {
      for (let i = this.#pivots[k]; i >= 0; i = this.#nextMember[i]) order[at++] = i;
    }
    return order;
  }

  eliminateNext(): void {
    const head = this.#head;
    while (head[this.#least] < 0) this.#least += 1;
    const pivot = head[this.#least];
    this.#unlist(pivot);
    this.#pivots[this.#pivotCount++] = pivot;
    this.eliminated += this.#weight[pivot];
    this.#formElement(pivot);
    this.#weighElements(pivot);
    this.#updateDegrees(pivot);
    this.#joinTwins(pivot);
    this.#close(pivot);
  }

  /** Gathers the neighbours of the pivot into one list, which becomes the new element; the pivot's old elements die in it. */
  #formElement(pivot: number): void {
    const weight = this.#weight;
    const elementCount = this.#elements[pivot];
    let total = 0;
    weight[pivot] = -weight[pivot];
    if (elementCount === 0) {
      const start = this.#from[pivot];
      let end = start;
      for (let p = start; p < start + this.#length[pivot]; p += 1) {
        const i = this.#pool[p];
        if (weight[i] <= 0) continue;
        total += weight[i];
        weight[i] = -weight[i];
        this.#pool[end++] = i;
        this.#unlist(i);
      }
      this.#length[pivot] = end - start;
    } else {
      this.#makeRoom(this.#degree[pivot]);
      const pool = this.#pool;
      const start = this.#free;
      let end = start;
      const listStart = this.#from[pivot];
      for (let k = 0; k <= elementCount; k += 1) {
        const own = k === elementCount;
        const e = own ? pivot : pool[listStart + k];
        const from = own ? listStart + elementCount : this.#from[e];
        const to = own ? listStart + this.#length[pivot] : from + this.#length[e];
        for (let p = from; p < to; p += 1) {
          const i = pool[p];
          if (weight[i] <= 0) continue;
          total += weight[i];
          weight[i] = -weight[i];
          pool[end++] = i;
          this.#unlist(i);
        }
        if (!own) this.#seen[e] = 0;
      }
      this.#from[pivot] = start;
      this.#length[pivot] = end - start;
      this.#free = end;
    }
    this.#elements[pivot] = -1;
    this.#degree[pivot] = total;
  }

  /** For every element that meets the new one: the weight of what it has outside (the paper's |Le \ Lp|), in `#seen` above `#flag`. */
  #weighElements(pivot: number): void {
    const pool = this.#pool;
    const seen = this.#seen;
    const flag = this.#flag;
    const from = this.#from[pivot];
    const to = from + this.#length[pivot];
    for (let q = from; q < to; q += 1) {
      const i = pool[q];
      const own = -this.#weight[i];
      const listStart = this.#from[i];
      const listEnd = listStart + this.#elements[i];
      for (let p = listStart; p < listEnd; p += 1) {
        const e = pool[p];
        if (seen[e] >= flag) seen[e] -= own;
        else if (seen[e] !== 0) seen[e] = this.#degree[e] + flag - own;
      }
    }
  }

  /** Cleans the lists of the element's unknowns, bounds their degrees, and takes out with the pivot those with no neighbour outside. */
  #updateDegrees(pivot: number): void {
    const pool = this.#pool;
    const weight = this.#weight;
    const seen = this.#seen;
    const flag = this.#flag;
    const from = this.#from[pivot];
    const to = from + this.#length[pivot];
    for (let q = from; q < to; q += 1) {
      const i = pool[q];
      const listStart = this.#from[i];
      const elementEnd = listStart + this.#elements[i];
      const listEnd = listStart + this.#length[i];
      let put = listStart;
      let hash = 0;
      let degree = 0;
      for (let p = listStart; p < elementEnd; p += 1) {
        const e = pool[p];
        if (seen[e] === 0) continue;
        const outside = seen[e] - flag;
        if (outside > 0) {
          degree += outside;
          pool[put++] = e;
          hash += e;
        } else {
          seen[e] = 0; // it lies wholly inside the new element
        }
      }
      const elementsLeft = put - listStart + 1;
      const firstUnknown = put;
      for (let p = elementEnd; p < listEnd; p += 1) {
        const j = pool[p];
        if (weight[j] <= 0) continue;
        degree += weight[j];
        pool[put++] = j;
        hash += j;
      }
      const stays = i >= this.#count;
      if (degree === 0 && !stays) {
        const own = -weight[i];
        this.#degree[pivot] -= own;
        this.eliminated += own;
        weight[pivot] -= own;
        weight[i] = 0;
        this.#follow(pivot, i);
        continue;
      }
      if (degree < this.#degree[i]) this.#degree[i] = degree;
      // The new element goes first; its place is free because at least one entry of the list has just died.
      pool[put] = pool[firstUnknown];
      pool[firstUnknown] = pool[listStart];
      pool[listStart] = pivot;
      this.#elements[i] = elementsLeft;
      this.#length[i] = put - listStart + 1;
      const key = ((stays ? hash + 1 : hash) >>> 0) % this.#size;
      this.#hash[i] = key;
      this.#bucketNext[i] = this.#bucketHead[key];
      this.#bucketHead[key] = i;
    }
    this.#largest = Math.max(this.#largest, this.#degree[pivot]);
    this.#raiseFlag(this.#largest);
  }

  /** Unknowns with equal lists are twins: they stay neighbours of the same nodes for ever, so one stands for both. */
  #joinTwins(pivot: number): void {
    const pool = this.#pool;
    const weight = this.#weight;
    const seen = this.#seen;
    const from = this.#from[pivot];
    const to = from + this.#length[pivot];
    for (let q = from; q < to; q += 1) {
      const first = pool[q];
      if (weight[first] >= 0) continue;
      const key = this.#hash[first];
      let i = this.#bucketHead[key];
      this.#bucketHead[key] = -1;
      for (; i >= 0 && this.#bucketNext[i] >= 0; i = this.#bucketNext[i]) {
        const length = this.#length[i];
        const elements = this.#elements[i];
        const listStart = this.#from[i];
        for (let p = listStart + 1; p < listStart + length; p += 1) seen[pool[p]] = this.#flag;
        let before = i;
        for (let j = this.#bucketNext[i]; j >= 0;) {
          let same =
            this.#length[j] === length && this.#elements[j] === elements && j >= this.#count === i >= this.#count;
          const otherStart = this.#from[j];
          for (let p = otherStart + 1; same && p < otherStart + length; p += 1) same = seen[pool[p]] === this.#flag;
          const after = this.#bucketNext[j];
          if (same) {
            weight[i] += weight[j];
            weight[j] = 0;
            this.#follow(i, j);
            this.#bucketNext[before] = after;
          } else {
            before = j;
          }
          j = after;
        }
        this.#raiseFlag(1);
      }
    }
  }

  /** Puts the element's unknowns back among the candidates and drops from its list those that are gone. */
  #close(pivot: number): void {
    const pool = this.#pool;
    const weight = this.#weight;
    const from = this.#from[pivot];
    const to = from + this.#length[pivot];
    const total = this.#degree[pivot];
    const left = this.#size - this.eliminated;
    let put = from;
    for (let q = from; q < to; q += 1) {
      const i = pool[q];
      const own = -weight[i];
      if (own <= 0) continue;
      weight[i] = own;
      this.#degree[i] = Math.max(0, Math.min(this.#degree[i] + total - own, left - own));
      this.#enlist(i);
      pool[put++] = i;
    }
    this.#length[pivot] = put - from;
    weight[pivot] = 0;
    this.#seen[pivot] = put > from ? 1 : 0;
    if (to === this.#free) this.#free = put;
  }

  #follow(leader: number, node: number): void {
    this.#nextMember[this.#lastMember[leader]] = node;
    this.#lastMember[leader] = this.#lastMember[node];
  }

  #enlist(i: number): void {
    if (i >= this.#count) return;
    const degree = this.#degree[i];
    const head = this.#head[degree];
    this.#next[i] = head;
    this.#previous[i] = -1;
    if (head >= 0) this.#previous[head] = i;
    this.#head[degree] = i;
    if (degree < this.#least) this.#least = degree;
  }

  #unlist(i: number): void {
    if (i >= this.#count) return;
    const before = this.#previous[i];
    const after = this.#next[i];
    if (before >= 0) this.#next[before] = after;
    else this.#head[this.#degree[i]] = after;
    if (after >= 0) this.#previous[after] = before;
  }

  #raiseFlag(by: number): void {
    this.#flag += by;
    if (this.#flag < 0x3fffffff) return;
    for (let i = 0; i < this.#size; i += 1) if (this.#seen[i] !== 0) this.#seen[i] = 1;
    this.#flag = 2;
  }

  /** Moves the live lists together when the pool has no room for another `count` entries. */
  #makeRoom(count: number): void {
    if (this.#free + count <= this.#pool.length) return;
    let live = 0;
    for (let i = 0; i < this.#size; i += 1) if (this.#isLive(i)) live += this.#length[i];
    const pool = new Int32Array(Math.max(this.#pool.length, live + live / 2 + count));
    let at = 0;
    for (let i = 0; i < this.#size; i += 1) {
      if (!this.#isLive(i)) continue;
      const from = this.#from[i];
      pool.set(this.#pool.subarray(from, from + this.#length[i]), at);
      this.#from[i] = at;
      at += this.#length[i];
    }
    this.#pool = pool;
    this.#free = at;
  }

  /** An unknown that still stands for itself (its weight is negative while it is the pivot), or an element that is not absorbed. */
  #isLive(i: number): boolean {
    return this.#weight[i] !== 0 || (this.#elements[i] < 0 && this.#seen[i] !== 0);
  }
}
