import { seededRandom } from '../../base/random.ts';
import type { Patch } from '../../model/patch.ts';
import { cutTriangles } from '../../steps/cut/cut-patches.ts';
import { dartTips, seamDegrees, seamTurns, type SeamGraph } from '../../steps/seams/propose-graph.ts';
import { surfaceArea } from '../../mesh/measure.ts';
import { topologyOf } from '../../mesh/topology.ts';
import type { Judge, Verdict } from './judge.ts';
import type { ProposalSum, ProposalWish } from './proposal.ts';
import { Slivers } from './slivers.ts';
import { tightBends, type TightBends } from './tight-bends.ts';

/** One choice of seams and what became of it. */
export interface Layout {
  readonly isSeam: Uint8Array;
  readonly degree: Uint8Array;
  readonly tips: readonly number[];
  readonly verdicts: readonly Verdict[];
  readonly keys: readonly string[];
  readonly patchOfTriangle: Int32Array;
  /** All that counts but what the limits say. */
  readonly sum: ProposalSum;
  /** Badness of all pieces that may change together; 0 where all these hold every limit. */
  readonly badness: number;
}

/** What pieces and darts cost beside seams, in roots of the area. */
export interface Prices {
  readonly piece: number;
  readonly dart: number;
}

/** From a dear piece and nearly free darts to cheap pieces and dear darts; between them in equal ratios. */
const FEW: Prices = { piece: 1.5, dart: 0.025 };
const SIMPLE: Prices = { piece: 0.2, dart: 0.5 };

export function pricesOf(dial: ProposalWish['dial']): Prices {
  const at = dial === 'few' ? 0 : dial === 'simple' ? 1 : Math.min(1, Math.max(0, dial));
  const between = (few: number, simple: number): number => few * (simple / few) ** at;
  return { piece: between(FEW.piece, SIMPLE.piece), dart: between(FEW.dart, SIMPLE.dart) };
}

/**
 * What a right angle's worth of turn in a seam costs, in roots of the area, and at most in middling edges: a hand with a knife follows a
 * smooth line.
 */
const TURN_PRICE = 0.02;
const TURN_EDGES = 0.6;
/** What a sliver next to nothing costs, in roots of the area: more than the dart that takes it away, whatever the dial says. */
const SLIVER_PRICE = 1.25;
/** What a piece with a part next to no width costs more: less than a piece that is a sliver, or slivers would not be made one with it. */
const NARROW_PRICE = 2.2;
/** A part just under the least width counts as so much of one. */
const LEAST_NARROW = 0.6;

/** What so much length of tight bend costs beside a seam there: more than the seam. */
const BEND_PRICE = 1.5;

/** A dart in foam costs this at least, whatever the dial says: it is two edges to glue up to a point, and what lies between two of them is weak. */
const LEAST_DART_IN_FOAM = 0.2;

/** Makes layouts of seams. */
export class Assessor {
  readonly graph: SeamGraph;
  readonly judge: Judge;
  readonly prices: Prices;
  readonly rootArea: number;
  /** Mean length of an edge over the root of the area. */
  readonly middlingEdge: number;
  readonly positions: Float64Array;
  /** 1 per triangle of pieces that stay as they are: what limits these break is told, but no layout is worse for it. */
  readonly #isSettled: Uint8Array | null;
  readonly #turnPrice: number;
  readonly slivers: Slivers;
  /** Null where bends do not matter. */
  readonly bends: TightBends | null;
  /** Of all layouts assessed the one nearest to holding every limit, the earliest of several. */
  nearest: Layout | null = null;
  readonly #triangleMarks: Uint32Array;
  readonly #edgeMarks: Uint32Array;

  constructor(
    graph: SeamGraph,
    judge: Judge,
    { positions, dial, fixedTriangles }: Pick<ProposalWish, 'positions' | 'dial' | 'fixedTriangles'>,
  ) {
    this.graph = graph;
    this.judge = judge;
    this.#isSettled = fixedTriangles ?? null;
    this.positions = positions;
    this.rootArea = Math.sqrt(surfaceArea(positions, graph.mesh.triangles));
    this.slivers = new Slivers(positions, this.rootArea ** 2, judge.limits.leastWidthMm ?? 0);
    this.middlingEdge = graph.length.reduce((sum, each) => sum + each, 0) / graph.edgeCount / this.rootArea;
    const { bend } = judge.limits;
    this.bends = bend === undefined ? null : tightBends(graph.mesh, positions, bend);
    const { piece, dart } = pricesOf(dial);
    const isOfFoam = (judge.limits.leastWidthMm ?? 0) > 0;
    this.prices = { piece, dart: isOfFoam ? Math.max(dart, LEAST_DART_IN_FOAM) : dart };
    this.#turnPrice = Math.min(TURN_PRICE, TURN_EDGES * this.middlingEdge);
    // A piece goes by the exclusive or of random marks of its triangles and of the seams inside it (Zobrist 1970).
    const random = seededRandom(0x5ea3);
    const marks = (count: number): Uint32Array =>
      Uint32Array.from({ length: 2 * count }, () => Math.floor(random() * 2 ** 32));
    this.#triangleMarks = marks(graph.mesh.triangles.length / 3);
    this.#edgeMarks = marks(graph.edgeCount);
  }

  /**
   * What seams cost before it is known how the pieces lie.
   * @param pieces   how many they fall into.
   * @param slivers  how many of these are hardly there.
   */
  sumOf(isSeam: Uint8Array, tips: number, pieces: number, slivers = 0): ProposalSum {
    const { cost, length: lengths } = this.graph;
    let sum = 0;
    let tight = 0;
    for (let e = 0; e < isSeam.length; e += 1) {
      if (isSeam[e] === 1) sum += cost[e] === Infinity ? lengths[e] : cost[e];
      else if (this.bends?.isEased[e] === 1) tight += lengths[e];
    }
    const bends = (BEND_PRICE * tight) / this.rootArea;
    const length = sum / this.rootArea;
    const turns = this.#turnPrice * seamTurns(this.graph, this.positions, isSeam);
    return {
      turns,
      total: length + turns + this.prices.piece * pieces + this.prices.dart * tips + SLIVER_PRICE * slivers + bends,
      length,
      pieces: this.prices.piece * pieces,
      darts: this.prices.dart * tips,
      slivers: SLIVER_PRICE * slivers,
      bends,
    };
  }

  /**
   * @param before  a layout of nearly the same seams: shapes begin from its.
   * @param most    what the whole may cost, `price` times badness included, before it does not matter any more.
   * @param mostBadness  badness that it may have in any case.
   * @returns null where it costs more.
   */
  async assess(
    isSeam: Uint8Array,
    before: Layout | null,
    most = Infinity,
    price = 1,
    mostBadness = Infinity,
  ): Promise<Layout | null> {
    const { graph } = this;
    const degree = seamDegrees(graph, isSeam);
    const tips = dartTips(graph, degree);
    if (this.sumOf(isSeam, tips.length, 1).total > most) return null;
    const { kept, touched } = this.#touchedPieces(isSeam, before);
    const patches = cutTriangles(graph.mesh, { isSeam }, this.positions, touched);
    const all = [...kept.flatMap((i) => before?.verdicts[i].patch ?? []), ...patches];
    const sum = this.sumOf(isSeam, tips.length, all.length, this.#sliversIn(all));
    if (most < sum.total) return null;
    const patchOfTriangle = before?.patchOfTriangle.slice() ?? new Int32Array(graph.mesh.triangles.length / 3);
    patches.forEach((patch, i) => {
      for (const t of patch.meshTriangles) patchOfTriangle[t] = -1 - i;
    });
    const found = kept.map((i) => ({ verdict: before?.verdicts[i], key: before?.keys[i] }));
    let badness = 0;
    let narrow = 0;
    const count = (verdict: Verdict): void => {
      badness += this.badnessOf(verdict);
      narrow += this.#narrowOf(verdict);
    };
    const room = (): number => Math.min((most - sum.total - narrow) / price, mostBadness) - badness;
    for (const { verdict } of found) if (verdict !== undefined) count(verdict);
    if (room() < 0) return null;
    for (const patch of patches) {
      const key = this.#keyOf(isSeam, patch, patchOfTriangle);
      const earlier = before === null ? [] : earlierOf(before, patch);
      const verdict = await this.judge.judge(key, patch, earlier, this.isSettled(patch) ? Infinity : room());
      count(verdict);
      if (room() < 0) return null;
      found.push({ verdict, key });
    }
    const whole = found
      .flatMap(({ verdict, key }) => (verdict === undefined || key === undefined ? [] : [{ verdict, key }]))
      .sort((a, b) => a.verdict.patch.meshTriangles[0] - b.verdict.patch.meshTriangles[0]);
    whole.forEach(({ verdict }, i) => {
      for (const t of verdict.patch.meshTriangles) patchOfTriangle[t] = i;
    });
    const [verdicts, keys] = [whole.map((each) => each.verdict), whole.map((each) => each.key)];
    const layout = { isSeam, degree, tips, verdicts, keys, patchOfTriangle, sum: withNarrow(sum, narrow), badness };
    if (this.nearest === null || badness < this.nearest.badness) this.nearest = layout;
    return layout;
  }

  /** Pieces that stay as they are can be none. */
  #sliversIn(patches: readonly Patch[]): number {
    return patches.reduce((sum, patch) => sum + (this.isSettled(patch) ? 0 : this.slivers.of(patch)), 0);
  }

  isSettled({ meshTriangles }: Patch): boolean {
    return this.#isSettled?.[meshTriangles[0]] === 1;
  }

  badnessOf({ patch, badness }: Verdict): number {
    return this.isSettled(patch) ? 0 : badness;
  }

  #narrowOf({ patch, widthShare }: Verdict): number {
    return widthShare <= 1 || this.isSettled(patch) ? 0 : NARROW_PRICE * (1 - (1 - LEAST_NARROW) / widthShare);
  }

  /** Pieces beside which no seam has come or gone, by number, and the triangles of all others, ascending. */
  #touchedPieces(
    isSeam: Uint8Array,
    before: Layout | null,
  ): { readonly kept: readonly number[]; readonly touched: Uint32Array } {
    if (before === null)
      return { kept: [], touched: Uint32Array.from({ length: this.graph.mesh.triangles.length / 3 }, (_, t) => t) };
    const { halfedgeOfEdge, twin } = topologyOf(this.graph.mesh);
    const touched = new Set<number>();
    for (let e = 0; e < isSeam.length; e += 1) {
      if (isSeam[e] === before.isSeam[e]) continue;
      const h = halfedgeOfEdge[e];
      touched.add(before.patchOfTriangle[Math.floor(h / 3)]);
      touched.add(before.patchOfTriangle[Math.floor(twin[h] / 3)]);
    }
    const kept = [...before.verdicts.keys()].filter((i) => !touched.has(i));
    const triangles = [...touched].flatMap((i) => Array.from(before.verdicts[i].patch.meshTriangles));
    return { kept, touched: Uint32Array.from(triangles).sort() };
  }

  /** The same layout with every piece laid flat in full from nothing. */
  async confirm(layout: Layout): Promise<Layout> {
    const verdicts: Verdict[] = [];
    for (const [i, verdict] of layout.verdicts.entries()) {
      verdicts.push(await this.judge.confirm(layout.keys[i], verdict));
    }
    return { ...layout, verdicts, badness: verdicts.reduce((sum, verdict) => sum + this.badnessOf(verdict), 0) };
  }

  #keyOf(isSeam: Uint8Array, patch: Patch, patchOfTriangle: Int32Array): string {
    const { edgeOfHalfedge, twin } = topologyOf(this.graph.mesh);
    const own = patchOfTriangle[patch.meshTriangles[0]];
    let [low, high] = [0, 0];
    for (const t of patch.meshTriangles) {
      low ^= this.#triangleMarks[2 * t];
      high ^= this.#triangleMarks[2 * t + 1];
      for (let h = 3 * t; h < 3 * t + 3; h += 1) {
        const across = twin[h];
        // Once for both sides.
        if (across < h || isSeam[edgeOfHalfedge[h]] === 0) continue;
        if (patchOfTriangle[Math.floor(across / 3)] !== own) continue;
        low ^= this.#edgeMarks[2 * edgeOfHalfedge[h]];
        high ^= this.#edgeMarks[2 * edgeOfHalfedge[h] + 1];
      }
    }
    return `${patch.meshTriangles.length} ${low >>> 0} ${high >>> 0}`;
  }
}

/** Narrow parts are known once pieces lie flat: they count with slivers. */
const withNarrow = (sum: ProposalSum, narrow: number): ProposalSum =>
  narrow === 0 ? sum : { ...sum, slivers: sum.slivers + narrow, total: sum.total + narrow };

/** Pieces of the earlier layout that share triangles, the one with the most first. */
function earlierOf({ patchOfTriangle, verdicts }: Layout, patch: Patch): Verdict[] {
  const count = new Map<number, number>();
  for (const t of patch.meshTriangles) count.set(patchOfTriangle[t], (count.get(patchOfTriangle[t]) ?? 0) + 1);
  return [...count].sort((a, b) => b[1] - a[1] || a[0] - b[0]).map(([i]) => verdicts[i]);
}
