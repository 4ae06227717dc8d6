import type { NearSide } from './depth-grid.ts';
import { fitsRoom, type Layout, type Rooms } from './layout.ts';
import type { PoseTable } from './pose-table.ts';
import { Surroundings } from './surroundings.ts';

/** Places tried at random in a pose: anywhere, and near where the piece lies. */
const ANYWHERE = 24;
const NEARBY = 12;
/** Poses tried in a move beside the one it lies in. */
const OTHER_POSES = 3;
/** Best places that are followed downhill. */
const FOLLOWED = 3;
/** Sides considered for places that touch two things. */
const MOST_SIDES = 14;
/** Lets the touching places that are aimed at survive being rounded to whole steps. */
const BEYOND = 1.5;

interface Spot {
  pose: number;
  x: number;
  y: number;
  price: number;
}

const emptySpot = (): Spot => ({ pose: 0, x: 0, y: 0, price: Infinity });

/** Looks for a cheaper place for one piece while all others stay. */
export class PlaceFinder {
  readonly #table: PoseTable;
  readonly #layout: Layout;
  readonly #weights: Float64Array;
  readonly #rand: () => number;
  readonly #around: Surroundings;
  readonly #spots: Spot[] = Array.from({ length: FOLLOWED }, emptySpot);
  readonly #sides: NearSide[] = Array.from({ length: MOST_SIDES + 4 }, () => ({ inside: 0, nx: 0, ny: 0 }));
  #rooms: Rooms;
  /** Where a piece's nought may be in the room and pose at hand. */
  #x0 = 0;
  #y0 = 0;
  #x1 = 0;
  #y1 = 0;
  #x = 0;
  #y = 0;
  #price = 0;
  /** The pose whose surroundings are gathered. */
  #gathered = -1;

  constructor(table: PoseTable, layout: Layout, rooms: Rooms, weights: Float64Array, rand: () => number) {
    this.#table = table;
    this.#layout = layout;
    this.#rooms = rooms;
    this.#weights = weights;
    this.#rand = rand;
    this.#around = new Surroundings(table, layout.count);
  }

  set rooms(rooms: Rooms) {
    this.#rooms = rooms;
  }

  /** Moves a piece to the best place found; it stays where none is cheaper. @returns the price of where it then lies. */
  move(piece: number): number {
    const { pose, x, y } = this.#layout;
    for (const spot of this.#spots) spot.price = Infinity;
    const own = pose[piece];
    this.#gathered = -1;
    this.#gather(piece, own);
    const now = this.#around.priceAt(x[piece], y[piece], Infinity);
    if (now === 0) return 0;
    this.#offer(own, x[piece], y[piece], now);
    this.#sample(piece, own);
    const looks = this.#table.looks[this.#table.shapeOf[own]];
    if (looks.length <= OTHER_POSES + 1) {
      for (const other of looks) if (other !== own) this.#try(piece, other);
    } else {
      for (let k = 0; k < OTHER_POSES; k += 1) this.#try(piece, looks[Math.floor(this.#rand() * looks.length)]);
    }
    let best = now;
    for (const spot of this.#spots) {
      if (spot.price === Infinity) continue;
      this.#follow(piece, spot);
      if (spot.price < best) {
        best = spot.price;
        pose[piece] = spot.pose;
        x[piece] = spot.x;
        y[piece] = spot.y;
      }
      if (best === 0) break;
    }
    return best;
  }

  #sizeOf(pose: number): number {
    const { minX, minY, maxX, maxY } = this.#table;
    return Math.min(maxX[pose] - minX[pose], maxY[pose] - minY[pose]);
  }

  #try(piece: number, pose: number): void {
    this.#gather(piece, pose);
    this.#sample(piece, pose);
  }

  #gather(piece: number, pose: number): void {
    if (this.#gathered === pose) return;
    this.#gathered = pose;
    this.#around.gather(this.#layout, this.#weights, piece, pose);
  }

  #sample(piece: number, pose: number): void {
    const { x, y } = this.#layout;
    const rooms = this.#rooms.length / 4;
    for (let k = 0; k < ANYWHERE && this.#spots[0].price > 0; k += 1) {
      if (!this.#enter(pose, rooms === 1 ? 0 : Math.floor(this.#rand() * rooms))) continue;
      const px = Math.round(this.#x0 + this.#rand() * (this.#x1 - this.#x0));
      const py = Math.round(this.#y0 + this.#rand() * (this.#y1 - this.#y0));
      this.#offer(pose, px, py, this.#around.priceAt(px, py, this.#spots[FOLLOWED - 1].price));
    }
    if (!this.#enter(pose, this.#roomAt(x[piece], y[piece], pose))) return;
    const reach =
      0.5 * Math.max(this.#table.maxX[pose] - this.#table.minX[pose], this.#table.maxY[pose] - this.#table.minY[pose]);
    for (let k = 0; k < NEARBY && this.#spots[0].price > 0; k += 1) {
      const px = this.#insideX(Math.round(x[piece] + (2 * this.#rand() - 1) * reach));
      const py = this.#insideY(Math.round(y[piece] + (2 * this.#rand() - 1) * reach));
      this.#offer(pose, px, py, this.#around.priceAt(px, py, this.#spots[FOLLOWED - 1].price));
    }
  }

  /** Number of the room whose places in a pose are nearest. */
  #roomAt(x: number, y: number, pose: number): number {
    const rooms = this.#rooms;
    let best = 0;
    let least = Infinity;
    for (let r = 0; r < rooms.length / 4; r += 1) {
      const away =
        Math.max(0, rooms[4 * r] - this.#table.minX[pose] - x, x - rooms[4 * r + 2] + this.#table.maxX[pose]) +
        Math.max(0, rooms[4 * r + 1] - this.#table.minY[pose] - y, y - rooms[4 * r + 3] + this.#table.maxY[pose]);
      if (away < least) {
        best = r;
        least = away;
      }
    }
    return best;
  }

  #enter(pose: number, room: number): boolean {
    if (!fitsRoom(this.#table, pose, this.#rooms, room)) return false;
    this.#x0 = this.#rooms[4 * room] - this.#table.minX[pose];
    this.#y0 = this.#rooms[4 * room + 1] - this.#table.minY[pose];
    this.#x1 = this.#rooms[4 * room + 2] - this.#table.maxX[pose];
    this.#y1 = this.#rooms[4 * room + 3] - this.#table.maxY[pose];
    return true;
  }

  #insideX = (x: number): number => (x < this.#x0 ? this.#x0 : x > this.#x1 ? this.#x1 : x);
  #insideY = (y: number): number => (y < this.#y0 ? this.#y0 : y > this.#y1 ? this.#y1 : y);

  /** Keeps a place if it is among the best. */
  #offer(pose: number, x: number, y: number, price: number): void {
    const spots = this.#spots;
    if (price >= spots[FOLLOWED - 1].price) return;
    let at = FOLLOWED - 1;
    const spot = spots[at];
    while (at > 0 && spots[at - 1].price > price) {
      spots[at] = spots[at - 1];
      at -= 1;
    }
    spots[at] = spot;
    spot.pose = pose;
    spot.x = x;
    spot.y = y;
    spot.price = price;
  }

  /** Goes downhill from a place: first in steps along axes and diagonals, then to places that touch two things at once. */
  #follow(piece: number, spot: Spot): void {
    const { pose } = spot;
    if (!this.#enter(pose, this.#roomAt(spot.x, spot.y, pose))) return;
    this.#gather(piece, pose);
    const size = this.#sizeOf(pose);
    this.#x = this.#insideX(spot.x);
    this.#y = this.#insideY(spot.y);
    this.#around.narrow(this.#x, this.#y, size);
    this.#price = this.#around.nearPriceAt(this.#x, this.#y, Infinity);
    let step = 0.1 * size;
    const least = 0.002 * size;
    let turn = Math.floor(this.#rand() * 4);
    let fails = 0;
    while (step > least && this.#price > 0) {
      const dx = turn === 1 ? 0 : step;
      const dy = turn === 0 ? 0 : turn === 3 ? -step : step;
      if (this.#go(this.#x + dx, this.#y + dy) || this.#go(this.#x - dx, this.#y - dy)) {
        step *= 1.1;
        fails = 0;
      } else {
        fails += 1;
        if (fails >= 2) step *= 0.6;
      }
      turn = (turn + 1 + Math.floor(this.#rand() * 3)) & 3;
    }
    if (this.#price > 0) this.#touch(Math.max(step * 4, 0.02 * size));
    if (this.#price > 0) this.#touch(0.005 * size);
    spot.x = this.#x;
    spot.y = this.#y;
    spot.price = this.#price;
  }

  #go(toX: number, toY: number): boolean {
    const x = this.#insideX(Math.round(toX));
    const y = this.#insideY(Math.round(toY));
    const price = this.#around.nearPriceAt(x, y, this.#price);
    if (price >= this.#price) return false;
    this.#x = x;
    this.#y = y;
    this.#price = price;
    return true;
  }

  /** Tries every place where two sides near here cross, walls of the room included, and the way straight out of each. */
  #touch(reach: number): void {
    const sides = this.#sides;
    const x = this.#x;
    const y = this.#y;
    let count = Math.min(MOST_SIDES, this.#around.nearSides(x, y, reach, sides));
    count = wall(sides, count, x - this.#x0, -1, 0, reach);
    count = wall(sides, count, this.#x1 - x, 1, 0, reach);
    count = wall(sides, count, y - this.#y0, 0, -1, reach);
    count = wall(sides, count, this.#y1 - y, 0, 1, reach);
    for (let i = 0; i < count && this.#price > 0; i += 1) {
      const a = sides[i];
      const out = a.inside + BEYOND;
      this.#go(x + a.nx * out, y + a.ny * out);
      for (let j = i + 1; j < count; j += 1) {
        const b = sides[j];
        const area = a.nx * b.ny - a.ny * b.nx;
        if (area < 0.02 && area > -0.02) continue;
        const other = b.inside + BEYOND;
        this.#go(x + (out * b.ny - other * a.ny) / area, y + (other * a.nx - out * b.nx) / area);
      }
    }
  }
}

/** A wall as a side: it is touched from within, after `away`. */
function wall(sides: NearSide[], count: number, away: number, nx: number, ny: number, reach: number): number {
  if (away > reach) return count;
  const side = sides[count];
  side.inside = away - BEYOND;
  side.nx = nx;
  side.ny = ny;
  return count + 1;
}
