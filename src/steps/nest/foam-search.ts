import { isTogether, type FoamLayout } from './foam-layout.ts';
import type { FoamTask } from './foam-task.ts';
import { putIn, type Layout } from './layout.ts';
import { LayoutCheck } from './layout-check.ts';
import { isBetter, scoreOf, usedRooms } from './layout-score.ts';
import type { RoomPlaces } from './quick-fit.ts';
import { RoomTable, type RoomsInHand } from './room-table.ts';
import { Separator } from './separator.ts';
import { StripSearch } from './strip-search.ts';

/** Rounds of the separator without a better best before a sheet is given up as needed; so many more each time it is tried again. */
const DROP_PATIENCE = 40;
/** Moves that shorten the last sheet between two times its pieces are tried on the others; so many more each time. */
const SHORTEN_MOVES = 4000;

/**
 * Betters a layout for as long as it is asked to: lays what has no place yet, empties sheets, fills the last one shorter. What is held never moves. Each
 * layout it takes over is better than the one before and was checked by true outlines, so more moves are never worse.
 */
export class FoamSearch {
  best: FoamLayout;
  readonly #task: FoamTask;
  readonly #rand: () => number;
  readonly #check: LayoutCheck;
  readonly #table: RoomTable;

  /** @param start lies clear, but for what is held. */
  constructor(task: FoamTask, start: FoamLayout, rand: () => number) {
    this.#task = task;
    this.#rand = rand;
    this.#check = new LayoutCheck(task, 0);
    this.#table = new RoomTable(task, start.places);
    this.best = start;
  }

  /** Takes over what was found elsewhere, where it is better. */
  offer(places: RoomPlaces): void {
    this.#take(places);
  }

  /** Goes on for as long as there is anything to better; it yields after each move. */
  *moves(): Generator<undefined, void, undefined> {
    for (let round = 1; ; round += 1) {
      const before = { moves: 0 };
      yield* counted(this.#layMore(round * DROP_PATIENCE), before);
      for (const room of this.#emptiable()) yield* counted(this.#empty(room, round * DROP_PATIENCE), before);
      yield* counted(this.#shorten(round * SHORTEN_MOVES), before);
      // Nothing can move: all is held, or nothing is there.
      if (before.moves === 0) return;
    }
  }

  #take(places: RoomPlaces): boolean {
    const score = scoreOf(this.#task, places, this.#check);
    if (!isBetter(score, this.best.score)) return false;
    if (!isTogether(this.#task, places) || !this.#isClear(places)) return false;
    this.best = { places, score };
    return true;
  }

  /** Held copies are the maker's own affair. */
  #isClear(places: RoomPlaces): boolean {
    const { held } = this.#task;
    return (
      this.#check.pairs(places).every(([i, j]) => held[i] !== null && held[j] !== null) &&
      this.#check.strays(places).every((i) => held[i] !== null)
    );
  }

  /** Sheets that could be spared, those that are bought first, of these and of those in hand the emptiest first. */
  #emptiable(): readonly number[] {
    const { places } = this.best;
    const { rooms, held, copies, parts } = this.#task;
    const used = usedRooms(places);
    if (used.length < 2) return [];
    const area = (room: number): number =>
      places.reduce((sum, place, i) => sum + (place?.room === room ? parts[copies[i].part].areaMm2 : 0), 0);
    return used
      .filter((room) => !held.some((place) => place?.room === room))
      .sort((a, b) => Number(rooms[b].stock === null) - Number(rooms[a].stock === null) || area(a) - area(b));
  }

  /** Tries the pieces of one sheet on the others. */
  *#empty(room: number, patience: number): Generator<undefined, void, undefined> {
    const { places } = this.best;
    const { rooms } = this.#task;
    const used = usedRooms(places);
    if (!used.includes(room) || used.length < 2) return;
    // To spare one that is bought, any in hand may be begun.
    const others = rooms[room].stock === null ? this.#inHandOr(used) : used;
    const left = others.filter((one) => one !== room);
    if (this.#areaOf(places) > left.reduce((sum, one) => sum + freeArea(this.#task, one), 0)) return;
    yield* this.#separate(left, patience, (i) => places[i]?.room === room);
  }

  /** Tries to lay what has no place on the sheets in hand. */
  *#layMore(patience: number): Generator<undefined, void, undefined> {
    const { copies, isTooLarge } = this.#task;
    const { places } = this.best;
    const next = copies.findIndex(({ part }, i) => places[i] === null && !isTooLarge[part]);
    if (next < 0) return;
    const rooms = this.#inHandOr(usedRooms(places));
    if (rooms.length === 0) return;
    yield* this.#separate(rooms, patience, (i) => i === next);
  }

  #inHandOr(used: readonly number[]): readonly number[] {
    return this.#task.rooms.map((_, i) => i).filter((i) => used.includes(i) || this.#task.rooms[i].stock !== null);
  }

  #areaOf(places: RoomPlaces): number {
    const { copies, parts } = this.#task;
    return places.reduce((sum, place, i) => sum + (place === null ? 0 : parts[copies[i].part].areaMm2), 0);
  }

  /** Puts some copies anywhere in the rooms and parts what then overlaps. */
  *#separate(
    rooms: readonly number[],
    patience: number,
    isPut: (copy: number) => boolean,
  ): Generator<undefined, void, undefined> {
    const { copies, parts } = this.#task;
    const groupOf = (i: number): string | null => parts[copies[i].part].group;
    const { places } = this.best;
    const hand = this.#table.lay(places, rooms, (i) => isPut(i) || (places[i] !== null && groupOf(i) === null), isPut);
    const roomOfGroup = new Map<string, number>();
    for (const [k, i] of hand.copies.entries()) {
      if (!isPut(i)) continue;
      const group = groupOf(i);
      const room = (group === null ? undefined : roomOfGroup.get(group)) ?? Math.floor(this.#rand() * rooms.length);
      if (group !== null) roomOfGroup.set(group, room);
      const [x0, y0, x1, y1] = hand.rooms.subarray(4 * room, 4 * room + 4);
      const [x, y] = [x0 + this.#rand() * (x1 - x0), y0 + this.#rand() * (y1 - y0)];
      putIn(this.#table.table, hand.layout, k, hand.rooms, room, x, y);
    }
    const least = hand.layout.copy();
    const separator = new Separator(this.#table.table, hand.layout, hand.rooms, this.#rand);
    const depth = yield* separator.separate(patience, least);
    yield;
    if (depth === 0) this.#take(this.#placesOf(hand, least));
  }

  /** Fills the last sheet shorter. With groups what lies on others stays there. */
  *#shorten(moves: number): Generator<undefined, void, undefined> {
    const { places } = this.best;
    const used = usedRooms(places);
    if (used.length === 0) return;
    const last = used[used.length - 1];
    const isParted = this.#task.parts.some(({ group }) => group !== null);
    const rooms = isParted ? [last] : used;
    const hand = this.#table.lay(
      places,
      rooms,
      (i) => places[i] !== null,
      () => false,
    );
    if (!hand.copies.some((i) => places[i]?.room === last)) return;
    const search = new StripSearch(this.#table.table, hand.layout, hand.rooms, this.#rand);
    const steps = search.moves();
    let { length } = search;
    for (let move = 0; move < moves; move += 1) {
      if (steps.next().done === true) return;
      if (search.length < length) {
        length = search.length;
        this.#take(this.#placesOf(hand, search.best));
      }
      yield;
    }
  }

  #placesOf(hand: RoomsInHand, layout: Layout): RoomPlaces {
    return this.#table.placesOf(this.best.places, hand, layout);
  }
}

/** Goes through, counting. */
function* counted(
  steps: Generator<undefined, void, undefined>,
  count: { moves: number },
): Generator<undefined, void, undefined> {
  while (steps.next().done !== true) {
    count.moves += 1;
    yield;
  }
}

function freeArea({ rooms }: FoamTask, room: number): number {
  const { minX, minY, maxX, maxY } = rooms[room].free;
  return (maxX - minX) * (maxY - minY);
}
