import { triangleOfHalfedge, topologyOf, type Topology } from '../../src/mesh/topology.ts';
import type { Mesh } from '../../src/mesh/mesh.ts';

/** A seam that parts a surface in two, and the same with a stretch of it moved over a strip of triangles to either side. */
export class MovableSeam {
  readonly #mesh: Mesh;
  readonly #topology: Topology;
  /** 0 or 1: on which side of the seam each triangle lies. */
  readonly #side: Uint8Array;
  /** Vertices of the seam from one end to the other. */
  readonly #chain: readonly number[];

  /**
   * Lays the seam across x, roughly where it parts off the given share of the triangles.
   * @param share  above 0, below 1
   */
  constructor(mesh: Mesh, share: number) {
    this.#mesh = mesh;
    this.#topology = topologyOf(mesh);
    const { positions, triangles } = mesh;
    const middles = Array.from({ length: triangles.length / 3 }, (_, t) =>
      [0, 1, 2].reduce((sum, k) => sum + positions[3 * triangles[3 * t + k]], 0),
    );
    const limit = [...middles].sort((a, b) => a - b)[Math.floor((1 - share) * middles.length)];
    this.#side = Uint8Array.from(middles, (x) => (x > limit ? 1 : 0));
    for (const side of [1, 0] as const) this.#joinIslands(side);
    this.#chain = longestChain(this.#edgesOf(this.#side));
  }

  /** Edges of the seam as it was laid, pairs of vertices. */
  get edges(): [number, number][] {
    return this.#edgesOf(this.#side);
  }

  /**
   * The seam with two stretches of it moved: behind `at` one piece gains a strip one triangle wide, before it it loses one.
   * @param at     place along the seam, 0 to 1
   * @param count  vertices of the seam along each strip
   */
  movedAt(at: number, count: number): { readonly edges: [number, number][]; readonly moved: number } {
    const side = this.#side.slice();
    const middle = Math.round(1 + count + at * (this.#chain.length - 2 * count - 3));
    const strips = [this.#chain.slice(middle - count, middle), this.#chain.slice(middle + 1, middle + 1 + count)];
    let moved = 0;
    strips.forEach((vertices, from) => {
      const near = new Set(vertices);
      for (let t = 0; t < side.length; t += 1) {
        const touches = [0, 1, 2].some((k) => near.has(this.#mesh.triangles[3 * t + k]));
        if (!touches || this.#side[t] !== from) continue;
        side[t] = 1 - from;
        moved += 1;
      }
    });
    return { edges: this.#edgesOf(side), moved };
  }

  #edgesOf(side: Uint8Array): [number, number][] {
    const { edgeCount, edgeVertices, halfedgeOfEdge, twin } = this.#topology;
    const edges: [number, number][] = [];
    for (let e = 0; e < edgeCount; e += 1) {
      const [h, across] = [halfedgeOfEdge[e], twin[halfedgeOfEdge[e]]];
      if (across < 0 || side[triangleOfHalfedge(h)] === side[triangleOfHalfedge(across)]) continue;
      edges.push([edgeVertices[2 * e], edgeVertices[2 * e + 1]]);
    }
    return edges;
  }

  /** Gives all but the largest connected part of one side to the other. */
  #joinIslands(which: 0 | 1): void {
    const seen = new Uint8Array(this.#side.length);
    const parts: number[][] = [];
    for (let seed = 0; seed < seen.length; seed += 1) {
      if (seen[seed] === 1 || this.#side[seed] !== which) continue;
      const part = [seed];
      seen[seed] = 1;
      for (const t of part) {
        for (let h = 3 * t; h < 3 * t + 3; h += 1) {
          const other = this.#topology.twin[h] < 0 ? t : triangleOfHalfedge(this.#topology.twin[h]);
          if (seen[other] === 1 || this.#side[other] !== which) continue;
          seen[other] = 1;
          part.push(other);
        }
      }
      parts.push(part);
    }
    parts.sort((a, b) => b.length - a.length);
    for (const part of parts.slice(1)) for (const t of part) this.#side[t] = 1 - which;
  }
}

/** The longest run of edges without a branch, as vertices in order. */
function longestChain(edges: readonly (readonly [number, number])[]): number[] {
  const beside = new Map<number, number[]>();
  for (const [v, w] of edges) {
    beside.set(v, [...(beside.get(v) ?? []), w]);
    beside.set(w, [...(beside.get(w) ?? []), v]);
  }
  let longest: number[] = [];
  for (const [end, next] of beside) {
    if (next.length !== 1) continue;
    const chain = [end];
    const met = new Set(chain);
    for (let v: number | undefined = end; v !== undefined; v = beside.get(v)?.find((w) => !met.has(w))) {
      if (v !== end) chain.push(v);
      met.add(v);
    }
    if (chain.length > longest.length) longest = chain;
  }
  return longest;
}
