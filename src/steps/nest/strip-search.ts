import { changePlaces, cutShort } from './disturb.ts';
import { rightEnd, type Layout, type Rooms } from './layout.ts';
import { firstOverlap } from './overlap-check.ts';
import type { PoseTable } from './pose-table.ts';
import { Separator } from './separator.ts';

/** The strip is made shorter by these shares at first, and while only small gains are left. */
const EXPLORE_SHARE = 0.008;
const COMPRESS_SHARE = 0.003;
/** Where a cut fails the next is smaller by this factor, down to the least. */
const SHARE_DECAY = 0.7;
const LEAST_SHARE = 0.00005;
/** Rounds of the separator without a much better best before it gives up. */
const EXPLORE_PATIENCE = 60;
const COMPRESS_PATIENCE = 30;

/**
 * Makes a strip shorter and shorter, for as long as it is asked to: it is cut short at a random place, what overlaps then is parted again, and
 * where that fails two large pieces change places or a smaller cut is tried. What it does depends on its start, its random numbers and what it is
 * offered alone, so more moves are never worse.
 */
export class StripSearch {
  readonly best: Layout;
  /** How far right the best layout reaches, steps of the lattice. */
  length: number;
  readonly #table: PoseTable;
  readonly #height: number;
  readonly #rand: () => number;
  readonly #now: Layout;
  readonly #separator: Separator;

  /** @param start lies clear in a strip from 0 to `height`. */
  constructor(table: PoseTable, start: Layout, height: number, rand: () => number) {
    this.#table = table;
    this.#height = height;
    this.#rand = rand;
    this.best = start.copy();
    this.length = rightEnd(table, start);
    this.#now = start.copy();
    this.#separator = new Separator(table, this.#now, this.#roomOf(this.length), rand);
  }

  /** Takes over a layout found elsewhere where it is shorter than its own best. */
  offer(layout: Layout, length: number): void {
    if (length >= this.length) return;
    this.length = length;
    this.best.copyFrom(layout);
  }

  /** Goes on without end; it yields after each move. */
  *moves(): Generator<undefined, never, undefined> {
    for (let round = 0; ; round += 1) {
      yield* this.#explore(2 + round);
      yield* this.#compress();
    }
  }

  /** Larger cuts; from what overlaps least, disturbed, where they fail. */
  *#explore(mostFails: number): Generator<undefined, void, undefined> {
    const least = this.#now.copy();
    const tried = this.#now.copy();
    let target = this.#cut(EXPLORE_SHARE);
    let leastDepth = Infinity;
    for (let fails = 0; fails < mostFails;) {
      const depth = yield* this.#separator.separate(EXPLORE_PATIENCE, tried);
      this.#now.copyFrom(tried);
      if (depth === 0) {
        this.#accept();
        target = this.#cut(EXPLORE_SHARE);
        leastDepth = Infinity;
        fails = 0;
        continue;
      }
      fails += 1;
      if (depth < leastDepth) {
        leastDepth = depth;
        least.copyFrom(tried);
      }
      this.#now.copyFrom(least);
      changePlaces(this.#table, this.#now, target, this.#height, this.#rand);
      this.#separator.resetWeights();
    }
  }

  /** Smaller and smaller cuts of the best. */
  *#compress(): Generator<undefined, void, undefined> {
    const tried = this.#now.copy();
    let share = COMPRESS_SHARE;
    while (share > LEAST_SHARE) {
      this.#cut(share);
      const depth = yield* this.#separator.separate(COMPRESS_PATIENCE, tried);
      this.#now.copyFrom(tried);
      if (depth === 0) this.#accept();
      else share *= SHARE_DECAY;
    }
  }

  /** Begins again from the best, cut short by a share. @returns the new length. */
  #cut(share: number): number {
    this.#now.copyFrom(this.best);
    const target = cutShort(this.#table, this.#now, this.length, share, this.#rand);
    this.#separator.rooms = this.#roomOf(target);
    this.#separator.resetWeights();
    return target;
  }

  /** What is now is the best, if the exact test agrees. */
  #accept(): void {
    const end = rightEnd(this.#table, this.#now);
    if (end >= this.length || firstOverlap(this.#table, this.#now, this.#roomOf(end)) !== null) return;
    this.length = end;
    this.best.copyFrom(this.#now);
  }

  #roomOf = (length: number): Rooms => Float64Array.of(0, 0, length, this.#height);
}
