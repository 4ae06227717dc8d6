import { changeSeams, cheapestWay, runFrom, seamEdgesAt } from '../../steps/seams/propose-graph.ts';
import type { Work } from '../../base/work.ts';
import type { Assessor, Layout } from './layout.ts';
import { isBetweenPieces, Moves, runsBetween } from './moves.ts';
import { narrowestPlace } from './piece-limits.ts';
import { waysToJoin } from './slivers.ts';

/** Moves of the first round, how much longer each next one is, and the longest. */
const FIRST_ROUND = 300;
const LONGER = 1.4;
const MOST_ROUND = 4000;
/**
 * How much worse a change may be and still be taken about once in three, in costs of a middling edge: at the start of a round and at its
 * end. Every third round begins {@link HOTTER} times as warm.
 */
const WARM = 0.6;
const COLD = 0.02;
const HOTTER = 2.5;
/** Changes without a better answer after which nothing better is expected. */
const MOST_IDLE = 100_000;
/** What badness costs, in roots of the area: at first, at least and at most. A tenth over a limit is then like so long a seam. */
const FIRST_PRICE = 5;
const LEAST_PRICE = 0.5;
const MOST_PRICE = 40;
/** By how much the price rises while what is at hand fails, and falls while it holds. */
const PRICE_STEP = 1.01;
/** Triangles laid flat in trials before an answer is told with the slivers it still has, about a tenth of a second, and before the last one is. */
const MOST_LAID_FOR_SLIVERS = 8_000;
const MOST_LAID_AT_END = 40_000;
/** Gains below this, in roots of the area, are rounding. */
const LEAST_GAIN = 1e-9;

export interface SearchEnds {
  /** Asked between moves. */
  readonly until: () => boolean;
  readonly onBetter: (layout: Layout, moves: number) => void;
}

/**
 * Seams made better by random changes: worse ones are taken with a chance that falls through each round (simulated annealing, Kirkpatrick,
 * Gelatt and Vecchi 1983), and layouts that fail a little may be passed through at a price that follows how often that happens. What is
 * told as better holds every limit, by pieces laid flat in full.
 */
export class Search {
  best: Layout | null = null;
  moves = 0;
  readonly #assessor: Assessor;
  readonly #random: () => number;
  readonly #ends: SearchEnds;
  readonly #work: Work;
  #sinceBetter = 0;
  /** Ways to join slivers that did not hold in this round. */
  readonly #inVain = new Set<string>();

  constructor(assessor: Assessor, random: () => number, ends: SearchEnds, work: Work) {
    this.#assessor = assessor;
    this.#random = random;
    this.#ends = ends;
    this.#work = work;
  }

  /** A way to begin made one piece where that is at once possible, and shortened. */
  async begin(first: Layout): Promise<Layout> {
    const from = (await this.#offer(first)) ?? first;
    return from.badness > 0 ? from : this.#partNecks(await this.#zip(await this.#joinAll(from)));
  }

  /** Round after round from the best there is. @param first  where to go on from while nothing holds every limit. */
  async run(first: Layout): Promise<Layout> {
    let from = first;
    let length = FIRST_ROUND;
    for (let round = 0; !this.#ends.until() && this.#sinceBetter < MOST_IDLE; round += 1) {
      this.#inVain.clear();
      const last = await this.#round(this.best ?? from, Math.round(length), round % 3 === 2 ? HOTTER : 1);
      length = Math.min(MOST_ROUND, length * LONGER);
      from = this.best ?? last;
      from = await this.#partNecks(await this.#zip(await this.#joinAll(from)));
    }
    if (this.best !== null) await this.#tell(await this.#withoutSlivers(this.best, MOST_LAID_AT_END));
    return this.best ?? from;
  }

  /** Takes a layout as the best so far, where it is. @returns the layout as it lies in full. */
  async #offer(layout: Layout): Promise<Layout | null> {
    if (layout.badness > 0 || !this.#isBetter(layout)) return null;
    return this.#tell(await this.#withoutSlivers(layout, MOST_LAID_FOR_SLIVERS));
  }

  async #tell(layout: Layout): Promise<Layout> {
    const sure = await this.#assessor.confirm(layout);
    if (sure.badness === 0 && this.#isBetter(sure)) {
      this.best = sure;
      this.#sinceBetter = 0;
      this.#ends.onBetter(sure, this.moves);
    }
    return sure;
  }

  #isBetter({ sum }: Layout): boolean {
    return this.best === null || sum.total < this.best.sum.total - LEAST_GAIN;
  }

  /**
   * Makes every sliver one with a neighbour, the smallest first, wherever all limits hold, at the price of darts too: as far as so
   * many triangles laid flat lead, for an answer should not wait long.
   */
  async #withoutSlivers(first: Layout, most: number): Promise<Layout> {
    const { graph, slivers, judge } = this.#assessor;
    const mostLaid = judge.laidTriangles + most;
    let now = first;
    for (let hasChanged = now.sum.slivers > 0; hasChanged;) {
      hasChanged = false;
      const found = [...now.verdicts.keys()].filter((i) => this.#isSliver(now, i));
      const sizeOf = (i: number): number => slivers.of(now.verdicts[i].patch);
      for (const piece of found.sort((a, b) => sizeOf(b) - sizeOf(a) || a - b)) {
        const next = await this.#joined(now, waysToJoin(graph, now, piece), now.keys[piece], mostLaid);
        if (next === null) continue;
        now = next;
        hasChanged = now.sum.slivers > 0;
        break;
      }
    }
    return now;
  }

  #isSliver({ verdicts }: Layout, piece: number): boolean {
    const { patch } = verdicts[piece];
    return this.#assessor.slivers.of(patch) > 0 && !this.#assessor.isSettled(patch);
  }

  /** The first way that holds. What failed before in this round is not tried again: a neighbour mostly grows. */
  async #joined(
    now: Layout,
    ways: readonly (readonly number[])[],
    key: string,
    mostLaid: number,
  ): Promise<Layout | null> {
    const { graph, judge } = this.#assessor;
    for (const taken of ways) {
      const name = `${key}|${taken.join(' ')}`;
      if (this.#inVain.has(name)) continue;
      if (judge.laidTriangles > mostLaid) return null;
      this.moves += 1;
      await this.#work.pause(0);
      const next = await this.#assessor.assess(changeSeams(graph, now.isSeam, taken, []), now, now.sum.total, 1, 0);
      if (next !== null) {
        const sure = await this.#assessor.confirm(next);
        if (sure.badness === 0) return sure;
      }
      this.#inVain.add(name);
    }
    return null;
  }

  async #round(first: Layout, length: number, warmth: number): Promise<Layout> {
    const moves = new Moves(this.#assessor.graph, this.#random);
    let now = first;
    let price = this.best === null ? MOST_PRICE : FIRST_PRICE;
    for (let i = 0; i < length && !this.#ends.until(); i += 1) {
      this.moves += 1;
      this.#sinceBetter += 1;
      await this.#work.pause(0);
      const heat = this.#assessor.middlingEdge * (WARM * warmth) ** (1 - i / length) * COLD ** (i / length);
      price = Math.min(MOST_PRICE, Math.max(LEAST_PRICE, price * (now.badness > 0 ? PRICE_STEP : 1 / PRICE_STEP)));
      const move = moves.next(now);
      if (move === null) continue;
      const isSeam = changeSeams(this.#assessor.graph, now.isSeam, move.taken, move.added);
      const most = now.sum.total + price * now.badness - heat * Math.log(1 - this.#random());
      const next = await this.#assessor.assess(isSeam, now, most, price);
      if (next === null) continue;
      now = (await this.#offer(next)) ?? next;
    }
    return now;
  }

  /** Makes neighbours one piece along the seam between them, all of it or a part, wherever the limits hold: the longest seam first. */
  async #joinAll(first: Layout): Promise<Layout> {
    let now = first;
    for (let count = Infinity; now.badness === 0 && now.verdicts.length < count && !this.#ends.until();) {
      count = now.verdicts.length;
      now = await this.#joinOnce(now);
    }
    return now;
  }

  async #joinOnce(first: Layout): Promise<Layout> {
    let now = first;
    const { graph } = this.#assessor;
    const lengthOf = (run: readonly number[]): number => run.reduce((sum, e) => sum + graph.length[e], 0);
    const runs = runsBetween(graph, now).sort((a, b) => lengthOf(b) - lengthOf(a) || a[0] - b[0]);
    for (const run of runs) {
      for (const stretch of stretchesOf(run)) {
        if (now.verdicts.length < 2 || !stretch.every((e) => now.isSeam[e] === 1 && isBetweenPieces(graph, now, e)))
          break;
        if (this.#ends.until()) return now;
        const next = await this.#try(now, stretch);
        if (next === null) continue;
        now = next;
        break;
      }
    }
    return now;
  }

  /** Takes seams away where all limits hold without them. */
  async #try(now: Layout, taken: readonly number[]): Promise<Layout | null> {
    this.moves += 1;
    await this.#work.pause(0);
    const isSeam = changeSeams(this.#assessor.graph, now.isSeam, taken, []);
    const next = await this.#assessor.assess(isSeam, now, now.sum.total, 1, 0);
    if (next === null || next.badness > 0) return null;
    const sure = await this.#offer(next);
    return sure !== null && sure.badness > 0 ? null : (sure ?? next);
  }

  /** Parts pieces across their narrowest places wherever that is worth it: two lobes that hang together by a thread are two pieces. */
  async #partNecks(first: Layout): Promise<Layout> {
    const { graph, judge } = this.#assessor;
    const least = judge.limits.leastWidthMm ?? 0;
    let now = first;
    if (now.badness > 0 || least <= 0) return now;
    for (const { patch, uv, widthShare } of first.verdicts) {
      if (uv === null || widthShare <= 1 || this.#assessor.isSettled(patch)) continue;
      if (this.#ends.until()) break;
      const [from, to] = narrowestPlace(patch, uv, least).between.map((v) => patch.meshVertices[v]);
      if (from === undefined || from === to) continue;
      const isBorder = (v: number): boolean => now.degree[v] > 0 || graph.isRim[v] === 1;
      const way = cheapestWay(
        graph,
        to,
        (v) => v === from,
        null,
        (v) => v !== from && isBorder(v),
      );
      if (way === null) continue;
      this.moves += 1;
      await this.#work.pause(0);
      const isSeam = changeSeams(graph, now.isSeam, [], way.edges);
      const next = await this.#assessor.assess(isSeam, now, now.sum.total, 1, 0);
      if (next === null || next.badness > 0) continue;
      const sure = await this.#offer(next);
      if (sure === null || sure.badness === 0) now = sure ?? next;
    }
    return now;
  }

  /** Shortens every dart from its tip, and parts with whole runs, as far as all limits hold: halving the length that is tried. */
  async #zip(first: Layout): Promise<Layout> {
    let now = first;
    if (now.badness > 0) return now;
    const { graph } = this.#assessor;
    for (const tip of first.tips) {
      if (now.degree[tip] !== 1) continue;
      const { edges } = runFrom(graph, now.isSeam, now.degree, tip, seamEdgesAt(graph, now.isSeam, tip)[0]);
      let done = 0;
      for (let count = edges.length; count >= 1 && !this.#ends.until(); count = Math.floor(count / 2)) {
        if (done + count > edges.length) continue;
        const next = await this.#try(now, edges.slice(done, done + count));
        if (next === null) continue;
        now = next;
        done += count;
      }
    }
    return now;
  }
}

/** All of a run, its halves, and a single edge in its middle. */
function stretchesOf(run: readonly number[]): (readonly number[])[] {
  const middle = run.length >> 1;
  return run.length < 2 ? [run] : [run, run.slice(0, middle), run.slice(middle), run.slice(middle, middle + 1)];
}
