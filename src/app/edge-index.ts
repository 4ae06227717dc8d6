import type { SculptView } from '../model/bench-view.ts';

/** Finds the edges of the sculpt by their ends: a table of the edges at each corner, made once per sculpt when first asked for. */
export class EdgeIndex {
  readonly #ends: Uint32Array;
  readonly #starts: Uint32Array;
  readonly #edges: Uint32Array;
  readonly #isDiagonal: Uint8Array;

  constructor(sculpt: Pick<SculptView, 'positions' | 'edgeVertices' | 'edgeIsDiagonal'>) {
    this.#ends = sculpt.edgeVertices;
    this.#isDiagonal = sculpt.edgeIsDiagonal;
    const corners = sculpt.positions.length / 3;
    this.#starts = new Uint32Array(corners + 1);
    for (const v of this.#ends) this.#starts[v + 1] += 1;
    for (let v = 0; v < corners; v += 1) this.#starts[v + 1] += this.#starts[v];
    this.#edges = new Uint32Array(this.#ends.length);
    const next = this.#starts.slice();
    for (let i = 0; i < this.#ends.length; i += 1) this.#edges[next[this.#ends[i]]++] = i >> 1;
  }

  /** Edges that end at a corner; those that only parting into triangles made are left out. */
  edgesAt(corner: number): number[] {
    return [...this.#edges.subarray(this.#starts[corner], this.#starts[corner + 1])].filter(
      (e) => this.#isDiagonal[e] === 0,
    );
  }

  /** All edges that end at a corner. */
  allEdgesAt(corner: number): readonly number[] {
    return [...this.#edges.subarray(this.#starts[corner], this.#starts[corner + 1])];
  }

  /** The corner at the other end of an edge. */
  across(edge: number, corner: number): number {
    const [a, b] = this.endsOf(edge);
    return a === corner ? b : a;
  }

  endsOf(edge: number): [number, number] {
    return [this.#ends[2 * edge], this.#ends[2 * edge + 1]];
  }

  /** The edge between two corners, or -1. */
  between(a: number, b: number): number {
    for (let i = this.#starts[a]; i < this.#starts[a + 1]; i += 1) {
      if (this.across(this.#edges[i], a) === b) return this.#edges[i];
    }
    return -1;
  }

  /** Edges of a walk from corner to corner; steps that are no edge are left out. */
  along(corners: ArrayLike<number>): number[] {
    const edges: number[] = [];
    for (let i = 0; i + 1 < corners.length; i += 1) {
      const edge = this.between(corners[i], corners[i + 1]);
      if (edge >= 0) edges.push(edge);
    }
    return edges;
  }
}

const known = new WeakMap<SculptView, EdgeIndex>();

/** The table of this sculpt, made on the first call. */
export function edgeIndexOf(sculpt: SculptView): EdgeIndex {
  let index = known.get(sculpt);
  if (index === undefined) {
    index = new EdgeIndex(sculpt);
    known.set(sculpt, index);
  }
  return index;
}

/**
 * Edges of the sculpt as pairs of file numbers, which is how the document names them; edges along a path name the path. Each pair once, and none
 * for edges that only the lines across faces have made.
 */
export function filePairs(sculpt: SculptView, edges: readonly number[]): [number, number][] {
  const { edgeNames, edgeVertices, fileVertex } = sculpt;
  if (edgeNames === undefined)
    return edges.map((e) => [fileVertex[edgeVertices[2 * e]], fileVertex[edgeVertices[2 * e + 1]]]);
  const pairs = new Map<string, [number, number]>();
  for (const e of edges) {
    const [a, b] = [edgeNames[2 * e], edgeNames[2 * e + 1]];
    if (a !== b || a < 0) pairs.set(`${a} ${b}`, [a, b]);
  }
  return [...pairs.values()];
}
