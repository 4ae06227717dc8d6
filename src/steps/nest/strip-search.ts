import { changePlaces, cutShort, scatter } from './disturb.ts';
import { isInRoom, rightEndIn, type Layout, type Rooms } from './layout.ts';
import { firstOverlap } from './overlap-check.ts';
import type { PoseTable } from './pose-table.ts';
import { Separator } from './separator.ts';
import { TriedPool } from './tried-pool.ts';

/**
 * The last room is made shorter by one of these shares, drawn anew for each round, while other arrangements are looked for: a small one lets pieces
 * slide, a large one breaks up what is locked into itself.
 */
const EXPLORE_SHARES = [0.004, 0.008, 0.016];
/** Rounds of the separator without a much better best before it gives up. What is locked comes apart by prices that have grown for long. */
const EXPLORE_PATIENCE = 200;
/** The first cuts of a round are far larger, and given up soon: the first layout is far from the shortest. */
const FIRST_SHARE = 0.06;
const FIRST_PATIENCE = 20;
/** Every other round begins anew, with a room so many times as long as the best, and is given up where it leads to nothing so near the best. */
const LONGER = 1.08;
const NEAR = 1.02;
/** Each round looks for other arrangements so many times as long as the one before. */
const EXPLORE_GROWTH = 1.2;
/** The best is then made shorter by this share; where a cut fails the next is smaller by this factor, down to the least. */
const COMPRESS_SHARE = 0.003;
const SHARE_DECAY = 0.7;
const LEAST_SHARE = 0.00005;
const COMPRESS_PATIENCE = 30;

/**
 * Makes the last room shorter and shorter, for as long as it is asked to; the others stay as they are. Round after round it looks for other
 * arrangements first, then presses the best. What it does depends on its start, its random numbers and what it is offered alone, so more moves are
 * never worse.
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
  readonly #exploreMoves: number;

  /**
   * @param start         lies clear in the rooms.
   * @param exploreMoves  moves the first round looks for other arrangements, >= 1.
   */
  constructor(table: PoseTable, start: Layout, rooms: Rooms, rand: () => number, exploreMoves = 4000) {
    this.#table = table;
    this.#rooms = rooms.slice();
    this.#last = rooms.length / 4 - 1;
    this.#rand = rand;
    this.#exploreMoves = exploreMoves;
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
    let most = this.#exploreMoves;
    for (let round = 0; this.length > 0; round += 1, most *= EXPLORE_GROWTH) {
      yield* this.#explore(most, round % 2 === 1);
      yield* this.#compress();
    }
  }

  /**
   * Cuts the best by a larger share, and what comes of that again, even where it is not the shortest any more. Where a cut fails it tries one half as
   * large, down to a least; then it goes on from one of the layouts tried at that length, most often one of those that overlap least, with two places
   * changed.
   * @param isAnew  begins with the pieces of the last room put anywhere in a longer one, and gives up where half its moves lead to nothing near the best.
   */
  *#explore(most: number, isAnew: boolean): Generator<undefined, void, undefined> {
    const least = EXPLORE_SHARES[Math.floor(this.#rand() * EXPLORE_SHARES.length)];
    const from = this.#separator.moves;
    const pool = new TriedPool();
    const tried = this.#now.copy();
    const own = this.best.copy();
    let length = isAnew ? Math.floor(this.length * LONGER) : this.length;
    let share = FIRST_SHARE;
    let isLaid = !isAnew;
    this.#now.copyFrom(own);
    let rooms = this.#cut(length, isAnew ? 0 : share);
    if (isAnew) scatter(this.#table, this.#now, rooms, this.#rand);
    while (this.#separator.moves < from + most && length > 0) {
      if (isAnew && this.#separator.moves > from + most / 2 && length > NEAR * this.length) return;
      const isFirst = isLaid && share > least;
      const depth = yield* this.#separator.separate(isFirst ? FIRST_PATIENCE : EXPLORE_PATIENCE, tried);
      yield;
      this.#now.copyFrom(tried);
      const end = rightEndIn(this.#table, this.#now, this.#rooms, this.#last);
      if (depth === 0 && (end < length || !isLaid) && this.#isClear(end)) {
        this.offer(this.#now, end);
        own.copyFrom(this.#now);
        length = end;
        isLaid = true;
        pool.clear();
        rooms = this.#cut(length, share);
      } else if (!isLaid) {
        scatter(this.#table, this.#now, rooms, this.#rand);
        this.#separator.resetWeights();
      } else if (depth === 0 && end >= length && share === least) {
        // Nothing overlaps, yet it is not shorter: a piece is as long as the room.
        return;
      } else if (share > least) {
        share = Math.max(least, share / 2);
        this.#now.copyFrom(own);
        rooms = this.#cut(length, share);
      } else {
        pool.add(tried, depth);
        this.#now.copyFrom(pool.draw(this.#rand));
        changePlaces(this.#table, this.#now, rooms, this.#rand);
        this.#separator.resetWeights();
      }
    }
  }

  /** Smaller and smaller cuts of the best. */
  *#compress(): Generator<undefined, void, undefined> {
    const tried = this.#now.copy();
    let share = COMPRESS_SHARE;
    while (share > LEAST_SHARE && this.length > 0) {
      const { length } = this;
      this.#now.copyFrom(this.best);
      this.#cut(length, share);
      const depth = yield* this.#separator.separate(COMPRESS_PATIENCE, tried);
      yield;
      this.#now.copyFrom(tried);
      const end = rightEndIn(this.#table, this.#now, this.#rooms, this.#last);
      if (depth === 0 && end < length && this.#isClear(end)) this.offer(this.#now, end);
      else share *= SHARE_DECAY;
    }
  }

  /** Cuts what is now short by a share. @returns the rooms, the last so much shorter. */
  #cut(length: number, share: number): Rooms {
    const rooms = this.#roomsOf(Math.floor(length * (1 - share)));
    cutShort(this.#table, this.#now, rooms, length, this.#rand);
    this.#separator.rooms = rooms;
    this.#separator.resetWeights();
    return rooms;
  }

  /** Whether the exact test lets what is now pass, in a last room so long. */
  #isClear(length: number): boolean {
    return firstOverlap(this.#table, this.#now, this.#roomsOf(length)) === null;
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
