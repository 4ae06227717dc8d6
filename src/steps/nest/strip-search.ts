import { changePlaces, cutShort } from './disturb.ts';
import { isInRoom, rightEndIn, type Layout, type Rooms } from './layout.ts';
import { firstOverlap } from './overlap-check.ts';
import type { PoseTable } from './pose-table.ts';
import { Separator } from './separator.ts';

/** The last room is made shorter by these shares at first, and while only small gains are left. */
const EXPLORE_SHARE = 0.005;
const COMPRESS_SHARE = 0.003;
/** Where a cut fails the next is smaller by this factor, down to the least. */
const SHARE_DECAY = 0.7;
const LEAST_SHARE = 0.00005;
/** Rounds of the separator without a much better best before it gives up. */
const EXPLORE_PATIENCE = 60;
const COMPRESS_PATIENCE = 30;

/**
 * Makes the last room shorter and shorter, for as long as it is asked to; the others stay as they are. It is cut short at a random place, what
 * overlaps then is parted again, and where that fails two large pieces change places or a smaller cut is tried. What it does depends on its start, its
 * random numbers and what it is offered alone, so more moves are never worse.
 */
export class StripSearch {
  readonly best: Layout;
  /** How far the best layout reaches into the last room, steps of the lattice. */
  length: number;
  readonly #table: PoseTable;
  readonly #rooms: Rooms;
  readonly #last: number;
  readonly #rand: () => number;
  readonly #now: Layout;
  readonly #separator: Separator;

  /** @param start lies clear in the rooms. */
  constructor(table: PoseTable, start: Layout, rooms: Rooms, rand: () => number) {
    this.#table = table;
    this.#rooms = rooms.slice();
    this.#last = rooms.length / 4 - 1;
    this.#rand = rand;
    this.best = start.copy();
    this.length = rightEndIn(table, start, rooms, this.#last);
    this.#now = start.copy();
    this.#separator = new Separator(table, this.#now, this.#roomsOf(this.length), rand);
  }

  /** Takes over a layout found elsewhere where it is shorter than its own best. */
  offer(layout: Layout, length: number): void {
    if (length >= this.length) return;
    this.length = length;
    this.best.copyFrom(layout);
  }

  /** Goes on for as long as anything lies in the last room; it yields after each move. */
  *moves(): Generator<undefined, void, undefined> {
    for (let round = 0; this.length > 0; round += 1) {
      yield* this.#explore(2 + round);
      yield* this.#compress();
    }
  }

  /** Larger cuts; from what overlaps least, disturbed, where they fail. */
  *#explore(mostFails: number): Generator<undefined, void, undefined> {
    const least = this.#now.copy();
    const tried = this.#now.copy();
    let rooms = this.#cut(EXPLORE_SHARE);
    let leastDepth = Infinity;
    for (let fails = 0; fails < mostFails && this.length > 0;) {
      const depth = yield* this.#separator.separate(EXPLORE_PATIENCE, tried);
      this.#now.copyFrom(tried);
      if (depth === 0 && this.#accept()) {
        rooms = this.#cut(EXPLORE_SHARE);
        leastDepth = Infinity;
        fails = 0;
        continue;
      }
      fails += 1;
      // Nothing overlaps, yet it is not shorter: a piece is as long as the room.
      if (depth > 0 && depth < leastDepth) {
        leastDepth = depth;
        least.copyFrom(tried);
      }
      if (leastDepth < Infinity) this.#now.copyFrom(least);
      changePlaces(this.#table, this.#now, rooms, this.#rand);
      this.#separator.resetWeights();
      yield;
    }
  }

  /** Smaller and smaller cuts of the best. */
  *#compress(): Generator<undefined, void, undefined> {
    const tried = this.#now.copy();
    let share = COMPRESS_SHARE;
    while (share > LEAST_SHARE && this.length > 0) {
      this.#cut(share);
      const depth = yield* this.#separator.separate(COMPRESS_PATIENCE, tried);
      this.#now.copyFrom(tried);
      if (depth > 0 || !this.#accept()) share *= SHARE_DECAY;
      yield;
    }
  }

  /** Begins again from the best, cut short by a share. @returns the rooms, the last so much shorter. */
  #cut(share: number): Rooms {
    this.#now.copyFrom(this.best);
    const rooms = this.#roomsOf(Math.floor(this.length * (1 - share)));
    cutShort(this.#table, this.#now, rooms, this.length, this.#rand);
    this.#separator.rooms = rooms;
    this.#separator.resetWeights();
    return rooms;
  }

  /** What is now is the best, if it is shorter and the exact test agrees. @returns whether it is. */
  #accept(): boolean {
    const end = rightEndIn(this.#table, this.#now, this.#rooms, this.#last);
    if (end >= this.length || firstOverlap(this.#table, this.#now, this.#roomsOf(end)) !== null) return false;
    this.length = end;
    this.best.copyFrom(this.#now);
    return true;
  }

  #roomsOf(length: number): Rooms {
    const rooms = this.#rooms.slice();
    rooms[4 * this.#last + 2] = rooms[4 * this.#last] + length;
    return rooms;
  }
}

/** Numbers of the movable pieces that lie in a room. */
export const piecesIn = (table: PoseTable, layout: Layout, rooms: Rooms, room: number): readonly number[] =>
  Array.from({ length: layout.movable }, (_, i) => i).filter((i) => isInRoom(table, layout, i, rooms, room));
