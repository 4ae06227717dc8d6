import { fitsRoom, type Layout, type Rooms } from './layout.ts';
import type { PoseTable } from './pose-table.ts';
import { Surroundings } from './surroundings.ts';

/**
 * Lays pieces one by one, the largest first, each as far to the left (of equals: as low) as a corner of what lies there already lets it: first rooms
 * are filled first. What is beyond `movable` lies already.
 * @param layout  gets the places of its movable pieces; their poses say which shapes they are.
 * @param rooms   see {@link Rooms}.
 * @returns numbers of pieces for which no place was found, in the order they were tried.
 */
export function firstFit(table: PoseTable, layout: Layout, rooms: Rooms): readonly number[] {
  const order = Array.from({ length: layout.movable }, (_, i) => i).sort(
    (i, j) => sizeOf(table, layout.pose[j]) - sizeOf(table, layout.pose[i]) || i - j,
  );
  const fixed = Array.from({ length: layout.count - layout.movable }, (_, i) => layout.movable + i);
  const laid: number[] = [...fixed];
  const lost: number[] = [];
  const finder = new CornerFinder(table, layout, rooms);
  for (const i of order) {
    if (finder.lay(i, laid)) laid.push(i);
    else lost.push(i);
  }
  return lost;
}

/** Longest pieces first, of equals the wide. */
function sizeOf(table: PoseTable, pose: number): number {
  const [w, h] = [table.maxX[pose] - table.minX[pose], table.maxY[pose] - table.minY[pose]];
  return w * h + Math.max(w, h) ** 2;
}

/** Of a no-fit area: corners x y packed, and the number of the one before each along its ring. */
interface Corners {
  readonly corners: Float64Array;
  readonly before: Int32Array;
}

class CornerFinder {
  readonly #table: PoseTable;
  readonly #layout: Layout;
  readonly #rooms: Rooms;
  readonly #around: Surroundings;
  readonly #ones: Float64Array;
  readonly #corners = new Map<number, Corners>();

  constructor(table: PoseTable, layout: Layout, rooms: Rooms) {
    this.#table = table;
    this.#layout = layout;
    this.#rooms = rooms;
    this.#around = new Surroundings(table, layout.count);
    this.#ones = new Float64Array(layout.count ** 2).fill(1);
  }

  /** Lays one piece among those that lie already. @returns false where it finds no place. */
  lay(piece: number, laid: readonly number[]): boolean {
    const table = this.#table;
    const shape = table.shapeOf[this.#layout.pose[piece]];
    for (let room = 0; room < this.#rooms.length / 4; room += 1) {
      const poses = table.looks[shape].filter((pose) => fitsRoom(table, pose, this.#rooms, room));
      const best = this.#bestOf(piece, poses, room, laid, false) ?? this.#bestOf(piece, poses, room, laid, true);
      if (best === null) continue;
      this.#layout.pose[piece] = best.pose;
      this.#layout.x[piece] = best.x;
      this.#layout.y[piece] = best.y;
      return true;
    }
    return false;
  }

  #bestOf(
    piece: number,
    poses: Int32Array,
    room: number,
    laid: readonly number[],
    isClosed: boolean,
  ): { readonly pose: number; readonly x: number; readonly y: number; readonly score: number } | null {
    let best: { pose: number; x: number; y: number; score: number } | null = null;
    for (const pose of poses) {
      const found = this.#leftmost(piece, pose, room, laid, best?.score ?? Infinity, isClosed);
      if (found !== null) best = { pose, ...found };
    }
    return best;
  }

  /**
   * @param isClosed  also tries where the sides that close the rings of the no-fit areas reach the walls of the room. A box beside a box of its
   *                  height has no other place. Tried only where nothing else was found: it takes time.
   */
  #leftmost(
    piece: number,
    pose: number,
    room: number,
    laid: readonly number[],
    under: number,
    isClosed: boolean,
  ): { readonly x: number; readonly y: number; readonly score: number } | null {
    const table = this.#table;
    const [rooms, layout] = [this.#rooms, this.#layout];
    const [x0, y0] = [rooms[4 * room] - table.minX[pose], rooms[4 * room + 1] - table.minY[pose]];
    const [x1, y1] = [rooms[4 * room + 2] - table.maxX[pose], rooms[4 * room + 3] - table.maxY[pose]];
    this.#around.gather(layout, this.#ones, piece, pose, laid);
    let [score, bestX, bestY] = [under, NaN, NaN];
    const offer = (x: number, y: number): void => {
      if (!(x >= x0 && x <= x1 && y >= y0 && y <= y1)) return;
      // The right edge counts, so that turns are chosen that lie flat against what is there.
      const mark = x + table.maxX[pose] + 1e-3 * (y - y0);
      if (mark >= score || this.#around.priceAt(x, y, 0) > 0) return;
      [score, bestX, bestY] = [mark, x, y];
    };
    offer(x0, y0);
    offer(x0, y1);
    for (const j of laid) {
      const other = layout.pose[j];
      const isSwapped = table.isSwapped(other, pose);
      const { corners, before } = this.#cornersOf(isSwapped ? table.gridOf(pose, other) : table.gridOf(other, pose));
      const [a, b, c, d] = isSwapped ? table.turns[pose].map((part) => -part) : table.turns[other];
      const xOf = (k: number): number => layout.x[j] + a * corners[k] + b * corners[k + 1];
      const yOf = (k: number): number => layout.y[j] + c * corners[k] + d * corners[k + 1];
      const offerSide = (lastX: number, lastY: number, x: number, y: number): void => {
        for (const wall of [y0, y1]) {
          if ((lastY - wall) * (y - wall) < 0)
            offer(Math.ceil(lastX + ((x - lastX) * (wall - lastY)) / (y - lastY)) + 1, wall);
        }
        if ((lastX - x0) * (x - x0) < 0) offer(x0, Math.ceil(lastY + ((y - lastY) * (x0 - lastX)) / (x - lastX)) + 1);
      };
      let [lastX, lastY] = [NaN, NaN];
      for (let k = 0; k < corners.length; k += 2) {
        const [x, y] = [xOf(k), yOf(k)];
        offer(Math.round(x), Math.round(y));
        offerSide(lastX, lastY, x, y);
        [lastX, lastY] = [x, y];
      }
      if (!isClosed) continue;
      for (const [e, first] of before.entries())
        if (first !== e - 1) offerSide(xOf(2 * first), yOf(2 * first), xOf(2 * e), yOf(2 * e));
    }
    return score < under ? { x: bestX, y: bestY, score } : null;
  }

  #cornersOf(grid: number): Corners {
    const known = this.#corners.get(grid);
    if (known !== undefined) return known;
    const area = this.#table.grids[grid];
    const made = { corners: area.clearCorners(), before: area.cornersBefore() };
    this.#corners.set(grid, made);
    return made;
  }
}
