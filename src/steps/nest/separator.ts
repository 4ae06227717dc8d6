import type { Layout, Rooms } from './layout.ts';
import { PlaceFinder } from './place-finder.ts';
import type { PoseTable } from './pose-table.ts';

/** Weights of pairs that overlap grow by these factors, the deeper the more; those of others fall back towards 1. */
const LEAST_GROWTH = 1.2;
const MOST_GROWTH = 2;
const DECAY = 0.95;
/** A best by this factor better lets the search go on. */
const MUCH_BETTER = 0.98;

/**
 * Parts pieces that overlap, by guided local search: one after the other goes where its overlaps cost least, and pairs that stay in each other's
 * way cost more and more (Egeblad, Nielsen, Odgaard 2007; Umetani et al. 2009; growth of weights as in arXiv 2509.13329).
 */
export class Separator {
  readonly layout: Layout;
  /** Moves made so far. */
  moves = 0;
  readonly #table: PoseTable;
  readonly #weights: Float64Array;
  /** Depth of each pair, in both halves. */
  readonly #depth: Float64Array;
  readonly #finder: PlaceFinder;
  readonly #rand: () => number;
  #deepest = 0;

  constructor(table: PoseTable, layout: Layout, rooms: Rooms, rand: () => number) {
    this.#table = table;
    this.layout = layout;
    this.#rand = rand;
    this.#weights = new Float64Array(layout.count ** 2).fill(1);
    this.#depth = new Float64Array(layout.count ** 2);
    this.#finder = new PlaceFinder(table, layout, rooms, this.#weights, rand);
  }

  set rooms(rooms: Rooms) {
    this.#finder.rooms = rooms;
  }

  resetWeights(): void {
    this.#weights.fill(1);
  }

  /**
   * Goes round the pieces that overlap until none does.
   * It yields after each move.
   * @param patience  rounds without a much better best before it gives up.
   * @param best      gets the layout that overlaps least.
   * @returns what still overlaps in it: depths of all pairs, those of larger pieces counted more; 0 where all are apart.
   */
  *separate(patience: number, best: Layout): Generator<undefined, number, undefined> {
    let total = this.#measureAll();
    let least = total;
    best.copyFrom(this.layout);
    const order: number[] = [];
    for (let idle = 0; total > 0 && idle < patience; idle += 1) {
      order.length = 0;
      for (let i = 0; i < this.layout.movable; i += 1) if (this.#rowOf(i) > 0) order.push(i);
      for (let i = order.length - 1; i > 0; i -= 1) {
        const j = Math.floor(this.#rand() * (i + 1));
        const kept = order[i];
        order[i] = order[j];
        order[j] = kept;
      }
      for (const i of order) {
        if (this.#rowOf(i) === 0) continue;
        this.#finder.move(i);
        this.#measure(i);
        this.moves += 1;
        yield;
      }
      total = this.#total();
      this.#reweigh();
      if (total >= least) continue;
      if (total < MUCH_BETTER * least) idle = -1;
      least = total;
      best.copyFrom(this.layout);
    }
    return least;
  }

  /** What overlaps in all, and which pair is the deepest. */
  #total(): number {
    const { count, pose } = this.layout;
    const { scale } = this.#table;
    let total = 0;
    this.#deepest = 0;
    for (let i = 0; i < count; i += 1) {
      for (let j = i + 1; j < count; j += 1) {
        const d = this.#depth[i * count + j];
        if (d === 0) continue;
        total += d * Math.sqrt(scale[pose[i]] * scale[pose[j]]);
        if (d > this.#deepest) this.#deepest = d;
      }
    }
    return total;
  }

  #reweigh(): void {
    const { count } = this.layout;
    const [weights, depth, deepest] = [this.#weights, this.#depth, this.#deepest];
    if (deepest === 0) return;
    for (let i = 0; i < count; i += 1) {
      for (let j = i + 1; j < count; j += 1) {
        const at = i * count + j;
        const d = depth[at];
        if (d > 0) weights[at] *= LEAST_GROWTH + ((MOST_GROWTH - LEAST_GROWTH) * d) / deepest;
        else if (weights[at] > 1) weights[at] = Math.max(1, weights[at] * DECAY);
        weights[j * count + i] = weights[at];
      }
    }
  }

  #rowOf(i: number): number {
    const { count } = this.layout;
    let sum = 0;
    for (let j = 0; j < count; j += 1) sum += this.#depth[i * count + j];
    return sum;
  }

  #measureAll(): number {
    const { count } = this.layout;
    for (let i = 0; i < count; i += 1) this.#measure(i);
    return this.#total();
  }

  #measure(i: number): void {
    const { count, pose, x, y } = this.layout;
    const { minX, minY, maxX, maxY, clear } = this.#table;
    const p = pose[i];
    for (let j = 0; j < count; j += 1) {
      if (j === i) continue;
      const q = pose[j];
      const dx = x[i] - x[j];
      const dy = y[i] - y[j];
      let d = 0;
      if (
        dx < maxX[q] - minX[p] + clear &&
        dx > minX[q] - maxX[p] - clear &&
        dy < maxY[q] - minY[p] + clear &&
        dy > minY[q] - maxY[p] - clear
      ) {
        d = this.#table.isSwapped(q, p) ? this.#table.depth(p, q, -dx, -dy) : this.#table.depth(q, p, dx, dy);
      }
      this.#depth[i * count + j] = d;
      this.#depth[j * count + i] = d;
    }
  }
}
