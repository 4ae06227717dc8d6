import {
  cheapestWay,
  otherEnd,
  runFrom,
  seamEdgesAt,
  seamRuns,
  type SeamGraph,
  type SeamWay,
} from '../../steps/seams/propose-graph.ts';
import { topologyOf } from '../../mesh/topology.ts';
import type { Layout } from './layout.ts';

/** Seams to take away and to add. */
export interface Move {
  readonly taken: readonly number[];
  readonly added: readonly number[];
}

/** Share of changes that join two of very many pieces. */
const MOST_JOINS = 0.3;
/** Spread of the noise on costs of edges when a way is looked for. */
const NOISE = 0.35;

/** Stretches of seam that have two different pieces beside them. */
export function runsBetween(graph: SeamGraph, { isSeam, degree, patchOfTriangle }: Layout): (readonly number[])[] {
  return seamRuns(graph, isSeam, degree).flatMap(({ edges }) =>
    edges.every((e) => graph.isFixed[e] === 0) && isBetweenPieces(graph, { patchOfTriangle }, edges[0]) ? [edges] : [],
  );
}

/** True where the triangles beside an edge belong to different pieces. */
export function isBetweenPieces(
  { mesh }: SeamGraph,
  { patchOfTriangle }: Pick<Layout, 'patchOfTriangle'>,
  edge: number,
): boolean {
  const { halfedgeOfEdge, twin } = topologyOf(mesh);
  const h = halfedgeOfEdge[edge];
  return patchOfTriangle[Math.floor(h / 3)] !== patchOfTriangle[Math.floor(twin[h] / 3)];
}

/** Random changes to seams, small ones more often than large ones. */
export class Moves {
  readonly #graph: SeamGraph;
  readonly #random: () => number;

  constructor(graph: SeamGraph, random: () => number) {
    this.#graph = graph;
    this.#random = random;
  }

  /** @returns null where the kind of change that came up has nothing to change. */
  next(layout: Layout): Move | null {
    // Many pieces first of all want to be fewer.
    if (this.#random() < MOST_JOINS * (1 - 1 / layout.verdicts.length)) return this.#join(layout);
    let pick = this.#random();
    for (const [share, make] of this.#kinds) {
      pick -= share;
      if (pick < 0) return make.call(this, layout);
    }
    return null;
  }

  readonly #kinds: readonly (readonly [number, (layout: Layout) => Move | null])[] = [
    [0.2, this.#shorten],
    [0.12, this.#lengthen],
    [0.19, this.#moveTip],
    [0.05, this.#dropDart],
    [0.06, this.#addDart],
    [0.08, this.#swapDart],
    [0.11, this.#reroute],
    [0.04, this.#rebase],
    [0.08, this.#reconnect],
    [0.02, this.#dropRun],
    [0.05, this.#close],
  ];

  #shorten(layout: Layout): Move | null {
    const tip = this.#pick(layout.tips);
    if (tip === null) return null;
    const { edges } = this.#dart(layout, tip);
    return { taken: edges.slice(0, this.#few(edges.length, 0.5)), added: [] };
  }

  #lengthen(layout: Layout): Move | null {
    const tip = this.#pick(layout.tips);
    if (tip === null) return null;
    const target = this.#walk(tip, 1 + Math.floor(4 * this.#random()));
    const way = cheapestWay(
      this.#graph,
      target,
      (v) => v === tip,
      this.#noise(),
      (v) => v !== tip && this.#isSewn(layout.degree, v),
    );
    return way === null ? null : { taken: [], added: way.edges };
  }

  /** Takes some of a dart's end away and brings it to a place near the old one. */
  #moveTip(layout: Layout): Move | null {
    const tip = this.#pick(layout.tips);
    if (tip === null) return null;
    const dart = this.#dart(layout, tip);
    const taken = dart.edges.slice(0, this.#few(dart.edges.length, 0.35));
    const target = this.#walk(tip, 1 + Math.floor(5 * this.#random()));
    const way = this.#wayToSeams(layout, taken, target);
    return way === null ? null : { taken, added: way.edges };
  }

  #dropDart(layout: Layout): Move | null {
    const tip = this.#pick(layout.tips);
    return tip === null ? null : { taken: this.#dart(layout, tip).edges, added: [] };
  }

  #addDart(layout: Layout): Move | null {
    const way = this.#wayToSeams(layout, [], this.#strained(layout));
    return way === null ? null : { taken: [], added: way.edges };
  }

  #swapDart(layout: Layout): Move | null {
    const tip = this.#pick(layout.tips);
    if (tip === null) return null;
    const taken = this.#dart(layout, tip).edges;
    const target = this.#random() < 0.5 ? this.#strained(layout) : this.#walk(tip, 1 + Math.floor(12 * this.#random()));
    const way = this.#wayToSeams(layout, taken, target);
    return way === null ? null : { taken, added: way.edges };
  }

  /** A stretch of a run is replaced by another way between its ends. */
  #reroute(layout: Layout): Move | null {
    const run = this.#run(layout);
    if (run === null || run.edges.length < 2) return null;
    const count = Math.min(run.edges.length, 2 + Math.floor(14 * this.#random()));
    const at = Math.floor(this.#random() * (run.edges.length - count + 1));
    const taken = run.edges.slice(at, at + count);
    const [from, to] = [run.vertices[at], run.vertices[at + count]];
    if (from === to) return null;
    const inside = new Set(run.vertices.slice(at + 1, at + count));
    const way = cheapestWay(
      this.#graph,
      to,
      (v) => v === from,
      this.#noise(),
      (v) => v !== from && !inside.has(v) && this.#isSewn(layout.degree, v),
    );
    return way === null ? null : { taken, added: way.edges };
  }

  /** The foot of a run goes to another place of a seam or an edge. */
  #rebase(layout: Layout): Move | null {
    const run = this.#run(layout);
    if (run === null || run.edges.length < 2) return null;
    const turned = this.#random() < 0.5;
    const edges = turned ? [...run.edges].reverse() : run.edges;
    const vertices = turned ? [...run.vertices].reverse() : run.vertices;
    const count = 1 + Math.floor(this.#random() * (edges.length - 1));
    const taken = edges.slice(0, count);
    const way = this.#wayToSeams(layout, taken, vertices[count]);
    return way === null ? null : { taken, added: way.edges };
  }

  /** A short stretch goes, and what it joined is joined again wherever that is cheapest. */
  #reconnect(layout: Layout): Move | null {
    const run = this.#run(layout);
    if (run === null) return null;
    const count = this.#few(run.edges.length, 0.4);
    const at = Math.floor(this.#random() * (run.edges.length - count + 1));
    const taken = run.edges.slice(at, at + count);
    const isSeam = layout.isSeam.slice();
    for (const e of taken) isSeam[e] = 0;
    const sides = [run.vertices[at], run.vertices[at + count]].map((v) => this.#hangingOn(isSeam, v));
    const own = sides.find((side) => side !== null);
    if (own === undefined || own === null) return null;
    const left = this.#touched(isSeam);
    const way = cheapestWay(
      this.#graph,
      [...own],
      (v) => !own.has(v) && (left[v] === 1 || this.#graph.isRim[v] === 1),
      this.#noise(),
    );
    return way === null ? null : { taken, added: way.edges };
  }

  #dropRun(layout: Layout): Move | null {
    const run = this.#run(layout);
    return run === null ? null : { taken: run.edges, added: [] };
  }

  /** Two pieces become one along a stretch of the seam between them. */
  #join(layout: Layout): Move | null {
    if (layout.verdicts.length < 2) return null;
    const between = runsBetween(this.#graph, layout);
    const small = this.#random() < 0.5 ? this.#besideSmallest(layout, between) : between;
    const run = this.#pick(small);
    if (run === null) return null;
    const count = this.#random() < 0.4 ? run.length : 1 + Math.floor(this.#random() * run.length);
    const at = Math.floor(this.#random() * (run.length - count + 1));
    return { taken: run.slice(at, at + count), added: [] };
  }

  #besideSmallest({ verdicts, patchOfTriangle }: Layout, runs: readonly (readonly number[])[]): (readonly number[])[] {
    const { halfedgeOfEdge, twin } = topologyOf(this.#graph.mesh);
    const count = (i: number): number => verdicts[i].patch.meshTriangles.length;
    const smallest = verdicts.reduce((best, _, i) => (count(i) < count(best) ? i : best), 0);
    return runs.filter(([e]) =>
      [halfedgeOfEdge[e], twin[halfedgeOfEdge[e]]].some((h) => patchOfTriangle[Math.floor(h / 3)] === smallest),
    );
  }

  /** A dart is led on to another seam or edge. */
  #close(layout: Layout): Move | null {
    const tip = this.#pick(layout.tips);
    if (tip === null) return null;
    const own = new Set(this.#dart(layout, tip).vertices);
    const way = cheapestWay(
      this.#graph,
      tip,
      (v) => !own.has(v) && this.#isSewn(layout.degree, v),
      this.#noise(),
      (v) => own.has(v),
    );
    return way === null ? null : { taken: [], added: way.edges };
  }

  /** The cheapest way from a vertex to what is left of the seams, or to an edge of the prop, but not to what hangs on that vertex itself. */
  #wayToSeams(layout: Layout, taken: readonly number[], target: number): SeamWay | null {
    const isSeam = layout.isSeam.slice();
    for (const e of taken) isSeam[e] = 0;
    const own = this.#hangingOn(isSeam, target);
    if (own === null) return null;
    const left = this.#touched(isSeam);
    return cheapestWay(
      this.#graph,
      target,
      (v) => !own.has(v) && (left[v] === 1 || this.#graph.isRim[v] === 1),
      this.#noise(),
      (v) => own.has(v),
    );
  }

  /** 1 per vertex at a seam. */
  #touched(isSeam: Uint8Array): Uint8Array {
    const touched = new Uint8Array(this.#graph.vertexCount);
    for (let e = 0; e < isSeam.length; e += 1) {
      if (isSeam[e] === 0) continue;
      touched[this.#graph.ends[2 * e]] = 1;
      touched[this.#graph.ends[2 * e + 1]] = 1;
    }
    return touched;
  }

  /** Vertices joined to one by seams, itself included; null where these reach an edge of the prop. */
  #hangingOn(isSeam: Uint8Array, from: number): Set<number> | null {
    const own = new Set([from]);
    if (this.#graph.isRim[from] === 1) return null;
    for (const v of own) {
      for (const e of seamEdgesAt(this.#graph, isSeam, v)) {
        const w = otherEnd(this.#graph, e, v);
        if (this.#graph.isRim[w] === 1) return null;
        own.add(w);
      }
    }
    return own;
  }

  #dart({ isSeam, degree }: Layout, tip: number): ReturnType<typeof runFrom> {
    return runFrom(this.#graph, isSeam, degree, tip, seamEdgesAt(this.#graph, isSeam, tip)[0]);
  }

  #run({ isSeam, degree }: Layout): ReturnType<typeof runFrom> | null {
    return this.#pick(seamRuns(this.#graph, isSeam, degree));
  }

  /** A corner of a triangle that is strained, the more the likelier. */
  #strained({ verdicts }: Layout): number {
    let best = 0;
    let most = -1;
    // The best of a few at random: no list of all is needed.
    for (let i = 0; i < 6; i += 1) {
      const { patch, strain } = verdicts[Math.floor(this.#random() * verdicts.length)];
      const t = Math.floor(this.#random() * strain.length);
      if (strain[t] <= most) continue;
      most = strain[t];
      best = patch.meshVertices[patch.triangles[3 * t + Math.floor(3 * this.#random())]];
    }
    return best;
  }

  #walk(from: number, steps: number): number {
    const { starts, edges } = this.#graph;
    let v = from;
    for (let i = 0; i < steps; i += 1) {
      v = otherEnd(this.#graph, edges[starts[v] + Math.floor(this.#random() * (starts[v + 1] - starts[v]))], v);
    }
    return v;
  }

  #noise(): Float64Array | null {
    if (this.#random() < 0.4) return null;
    return Float64Array.from({ length: this.#graph.edgeCount }, () => 1 + NOISE * this.#random());
  }

  /** 1 to `most`, each further one so much less likely. */
  #few(most: number, share: number): number {
    let count = 1;
    while (count < most && this.#random() < share) count += 1;
    return count;
  }

  #isSewn(degree: Uint8Array, v: number): boolean {
    return degree[v] > 0 || this.#graph.isRim[v] === 1;
  }

  #pick<T>(list: readonly T[]): T | null {
    return list.length === 0 ? null : list[Math.floor(this.#random() * list.length)];
  }
}
