import { ringArea } from '../../geom/ring.ts';
import { firstFit } from './first-fit.ts';
import { putIn, rightEndIn, type Layout, type Rooms } from './layout.ts';
import { firstOverlap } from './overlap-check.ts';
import type { PoseTable } from './pose-table.ts';
import { Separator } from './separator.ts';
import { piecesIn, StripSearch } from './strip-search.ts';

/** Rounds of the separator without a better best before a sheet is given up as needed; so many more each time it is tried again. */
const DROP_PATIENCE = 40;
/** Moves that shorten the last sheet between two times its pieces are tried on the others; so many more each time. */
const SHORTEN_MOVES = 4000;

/** Lays pieces on as few sheets of one size as it can, and on the last of them as far to the left as it can. */
export class SheetSearch {
  best: Layout;
  /** Sheets in use, side by side from left to right, far enough apart that pieces on two of them never meet. */
  rooms: Rooms;
  readonly #table: PoseTable;
  readonly #rand: () => number;
  readonly #area: number;

  /**
   * @param pieces  its poses say which shapes they are; every shape fits an empty sheet in one of its poses, else RangeError.
   * @param width   usable length of a sheet, steps of the lattice: the direction in which the last one is filled.
   * @param height  usable breadth.
   */
  constructor(table: PoseTable, pieces: Layout, width: number, height: number, rand: () => number) {
    this.#table = table;
    this.#rand = rand;
    this.best = pieces.copy();
    const pitch = width + 2 * Math.max(width, height) + 16;
    const all = Float64Array.from({ length: 4 * pieces.movable }, (_, i) => {
      const x0 = Math.floor(i / 4) * pitch;
      return [x0, 0, x0 + width, height][i % 4];
    });
    const lost = firstFit(table, this.best, all);
    if (lost.length > 0) throw new RangeError(`piece ${lost[0]} fits no empty sheet`);
    let used = 0;
    for (let room = 0; room < pieces.movable; room += 1)
      if (piecesIn(table, this.best, all, room).length > 0) used = room + 1;
    this.rooms = all.slice(0, 4 * used);
    this.#area = Array.from({ length: pieces.movable }, (_, i) =>
      table.ringsOf(this.best.pose[i]).reduce((sum, ring) => sum + ringArea(ring), 0),
    ).reduce((sum, area) => sum + area, 0);
  }

  get sheets(): number {
    return this.rooms.length / 4;
  }

  /** How far the last sheet is filled, steps of the lattice. */
  get length(): number {
    return rightEndIn(this.#table, this.best, this.rooms, this.sheets - 1);
  }

  /** Goes on without end; it yields after each move. */
  *moves(): Generator<undefined, never, undefined> {
    for (let round = 1; ; round += 1) {
      while (this.sheets > 1 && (yield* this.#drop(round * DROP_PATIENCE)));
      const search = new StripSearch(this.#table, this.best, this.rooms, this.#rand);
      const steps = search.moves();
      for (let move = 0; move < round * SHORTEN_MOVES; move += 1) {
        if (steps.next().done === true) break;
        if (search.length < this.length) this.best = search.best.copy();
        yield;
      }
      yield;
    }
  }

  /** Tries the pieces of the last sheet on the others. @returns whether that sheet is free now. */
  *#drop(patience: number): Generator<undefined, boolean, undefined> {
    const fewer = this.rooms.slice(0, -4);
    const count = fewer.length / 4;
    const [x0, y0, x1, y1] = fewer;
    if (this.#area > count * (x1 - x0) * (y1 - y0)) return false;
    const now = this.best.copy();
    for (const i of piecesIn(this.#table, now, this.rooms, count)) {
      const room = Math.floor(this.#rand() * count);
      const x = fewer[4 * room] + this.#rand() * (x1 - x0);
      putIn(this.#table, now, i, fewer, room, x, y0 + this.#rand() * (y1 - y0));
    }
    const least = now.copy();
    const depth = yield* new Separator(this.#table, now, fewer, this.#rand).separate(patience, least);
    if (depth > 0 || firstOverlap(this.#table, least, fewer) !== null) return false;
    this.best = least;
    this.rooms = fewer;
    return true;
  }
}
