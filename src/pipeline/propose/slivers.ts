import { surfaceArea } from '../../mesh/measure.ts';
import type { Patch } from '../../model/patch.ts';
import { topologyOf } from '../../mesh/topology.ts';
import type { SeamGraph } from '../../steps/seams/propose-graph.ts';
import type { Layout } from './layout.ts';

/** Share of the area under which a piece is a sliver nobody wants to cut. */
const SLIVER_SHARE = 0.01;
/** A piece is one too where twice its area over its border, half the side of a square and all the width of a strip, is under this much of the least width. */
const NARROW_SHARE = 0.5;
/** A piece just under these counts as so much of a sliver, one next to nothing as 1. */
const LEAST_COUNT = 0.6;

/** Tells which pieces are too small or too narrow for anybody's knife. */
export class Slivers {
  readonly #positions: Float64Array;
  readonly #leastAreaMm2: number;
  readonly #leastWidthMm: number;
  readonly #known = new WeakMap<Patch, number>();

  /** @param areaMm2  of the whole surface. */
  constructor(positions: Float64Array, areaMm2: number, leastWidthMm: number) {
    this.#positions = positions;
    this.#leastAreaMm2 = SLIVER_SHARE * areaMm2;
    this.#leastWidthMm = NARROW_SHARE * leastWidthMm;
  }

  /** How much of a sliver a piece is: 0 for none, else {@link LEAST_COUNT} to 1. */
  of(patch: Patch): number {
    let count = this.#known.get(patch);
    if (count === undefined) {
      count = this.#count(patch);
      this.#known.set(patch, count);
    }
    return count;
  }

  /** True where both halves of a piece would be large enough. */
  isWorthHalving(patch: Patch): boolean {
    return this.#areaOf(patch) > 2 * this.#leastAreaMm2;
  }

  #areaOf({ triangles, meshVertices }: Patch): number {
    return surfaceArea(
      this.#positions,
      Uint32Array.from(triangles, (v) => meshVertices[v]),
    );
  }

  #count(patch: Patch): number {
    const area = this.#areaOf(patch);
    const wide = this.#leastWidthMm > 0 ? (2 * area) / this.#borderLength(patch) / this.#leastWidthMm : 1;
    const share = Math.min(area / this.#leastAreaMm2, wide);
    return share < 1 ? 1 - (1 - LEAST_COUNT) * share : 0;
  }

  /** mm. */
  #borderLength({ loops, meshVertices }: Patch): number {
    const p = this.#positions;
    let sum = 0;
    for (const loop of loops) {
      loop.forEach((v, i) => {
        const [a, b] = [3 * meshVertices[v], 3 * meshVertices[loop[(i + 1) % loop.length]]];
        sum += Math.hypot(p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]);
      });
    }
    return sum;
  }
}

/** Stretches of seam tried with one neighbour. */
const MOST_STRETCHES = 8;

/**
 * Ways to make a piece one with a neighbour, the neighbour with the longest common seam first: along all of that seam, along halves of it, and
 * by its longest edges alone.
 * @param piece  its number in the layout.
 */
export function waysToJoin(graph: SeamGraph, { isSeam, patchOfTriangle }: Layout, piece: number): number[][] {
  const { halfedgeOfEdge, twin } = topologyOf(graph.mesh);
  const shared = new Map<number, number[]>();
  for (let e = 0; e < graph.edgeCount; e += 1) {
    if (isSeam[e] === 0 || graph.isFixed[e] === 1) continue;
    const h = halfedgeOfEdge[e];
    const [a, b] = [patchOfTriangle[Math.floor(h / 3)], patchOfTriangle[Math.floor(twin[h] / 3)]];
    if (a === b || (a !== piece && b !== piece)) continue;
    const other = a === piece ? b : a;
    shared.set(other, [...(shared.get(other) ?? []), e]);
  }
  const lengthOf = (edges: readonly number[]): number => edges.reduce((sum, e) => sum + graph.length[e], 0);
  return [...shared]
    .sort((a, b) => lengthOf(b[1]) - lengthOf(a[1]) || a[0] - b[0])
    .flatMap(([, edges]) => stretchesOf(graph, edges).slice(0, MOST_STRETCHES));
}

function stretchesOf(graph: SeamGraph, edges: readonly number[]): number[][] {
  const inRow = connectedRuns(graph, edges).sort((a, b) => b.length - a.length || a[0] - b[0]);
  const ways: number[][] = [[...edges]];
  for (const run of inRow) {
    if (inRow.length > 1) ways.push(run);
    if (run.length > 3) ways.push(run.slice(0, run.length >> 1), run.slice(run.length >> 1));
  }
  const longest = edges.toSorted((a, b) => graph.length[b] - graph.length[a] || a - b);
  if (edges.length > 1) ways.splice(Math.min(ways.length, MOST_STRETCHES / 2), Infinity, ...longest.map((e) => [e]));
  return ways;
}

/** Edges in rows in which each one touches the next. */
function connectedRuns({ ends }: SeamGraph, edges: readonly number[]): number[][] {
  const left = new Set(edges);
  const runs: number[][] = [];
  const nextTo = (v: number): number | undefined => [...left].find((e) => ends[2 * e] === v || ends[2 * e + 1] === v);
  for (const first of edges) {
    if (!left.delete(first)) continue;
    const run = [first];
    for (const side of [0, 1]) {
      let v = ends[2 * first + side];
      for (let e = nextTo(v); e !== undefined; e = nextTo(v)) {
        left.delete(e);
        if (side === 0) run.unshift(e);
        else run.push(e);
        v = ends[2 * e] === v ? ends[2 * e + 1] : ends[2 * e];
      }
    }
    runs.push(run);
  }
  return runs;
}
