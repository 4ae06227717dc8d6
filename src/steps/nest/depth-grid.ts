import { sidesOf, SideScan, STRIDE } from './no-fit-sides.ts';

/** Cells along the longer side of a no-fit area: more for one of many sides. */
const LEAST_CELLS = 24;
const MOST_CELLS = 64;
const CELLS_PER_SIDE = 1.5;
/** Cells along a block of them: a power of two. */
const BLOCK_BITS = 3;
const BLOCK = 1 << BLOCK_BITS;

/** From so many half diagonals of a cell inward it is deep: only a good guess of the depth is needed, of the two nearest sides. */
const DEEP = 4;

/** A side near a place: the place lies `inside` by so much (outside where negative), and gets out along `nx`, `ny`. */
export interface NearSide {
  inside: number;
  nx: number;
  ny: number;
}

/**
 * How deep a place lies inside an area, asked millions of times: a grid over the area whose every cell names the few sides that can be the
 * nearest to a place in it. Exact near the border; deep inside a side or two may be missed. What a cell names is found when it is first asked for: of
 * thousands of grids most cells never are.
 *
 *     +----+----+----+      cell 0: empty, clear of the area
 *     | 0  | ab | b  |      cell 1: sides a and b
 *     +----+--\-+----+
 */
export class DepthGrid {
  readonly #x0: number;
  readonly #y0: number;
  readonly #cell: number;
  readonly #perUnit: number;
  readonly #columns: number;
  readonly #rows: number;
  /** Where the list of a cell begins in the items, -1 while it was not asked for; a list is its count and its sides. */
  readonly #starts: Int32Array;
  #items: Uint16Array;
  #used = 1;
  /** No place in a cell is less deep than this. */
  readonly #floors: Float32Array;
  readonly #blocks: (Uint16Array | undefined)[];
  readonly #all: Uint16Array;
  readonly #sides: Float64Array;
  readonly #clear: number;

  /**
   * @param rings clean, outer ones counter-clockwise, holes clockwise, fewer than 65,536 sides.
   * @param clear how far from the area a place must be to count as clear of it, >= 0.
   */
  constructor(rings: readonly Float64Array[], clear: number) {
    this.#clear = clear;
    this.#sides = sidesOf(rings);
    let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
    for (const ring of rings) {
      for (let i = 0; i < ring.length; i += 2) {
        x0 = Math.min(x0, ring[i]);
        x1 = Math.max(x1, ring[i]);
        y0 = Math.min(y0, ring[i + 1]);
        y1 = Math.max(y1, ring[i + 1]);
      }
    }
    const edge = clear + 1;
    const size = Math.max(x1 - x0, y1 - y0) + 2 * edge;
    const count = this.#sides.length / STRIDE;
    const cell = size / Math.min(MOST_CELLS, Math.max(LEAST_CELLS, Math.ceil(CELLS_PER_SIDE * count)));
    this.#cell = cell;
    this.#x0 = x0 - edge;
    this.#y0 = y0 - edge;
    this.#perUnit = 1 / cell;
    this.#columns = Math.max(1, Math.ceil((x1 - x0 + 2 * edge) / cell));
    this.#rows = Math.max(1, Math.ceil((y1 - y0 + 2 * edge) / cell));
    this.#starts = new Int32Array(this.#columns * this.#rows).fill(-1);
    this.#floors = new Float32Array(this.#columns * this.#rows);
    this.#items = new Uint16Array(256);
    this.#all = Uint16Array.from({ length: this.#sides.length / STRIDE }, (_, e) => e);
    this.#blocks = new Array<undefined>(Math.ceil(this.#columns / BLOCK) * Math.ceil(this.#rows / BLOCK));
  }

  /** Corners of the area, each moved out so that it counts as clear by `clear`: x y packed. */
  clearCorners(): Float64Array {
    const s = this.#sides;
    const count = s.length / STRIDE;
    const out = new Float64Array(2 * count);
    const by = this.#clear + 1;
    for (let e = 0; e < count; e += 1) {
      const at = e * STRIDE;
      const before = this.#before(e) * STRIDE;
      const [ax, ay, bx, by2] = [s[before + 3], -s[before + 2], s[at + 3], -s[at + 2]];
      const scale = by / Math.max(0.02, 1 + ax * bx + ay * by2);
      out[2 * e] = s[at] + (ax + bx) * scale;
      out[2 * e + 1] = s[at + 1] + (ay + by2) * scale;
    }
    return out;
  }

  /** Number of the corner that comes before each of {@link clearCorners} along its ring. */
  cornersBefore(): Int32Array {
    return Int32Array.from({ length: this.#sides.length / STRIDE }, (_, e) => this.#before(e));
  }

  /** Depth of a place under the border that counts as clear; 0 where it is clear. */
  depth(x: number, y: number): number {
    const cx = Math.floor((x - this.#x0) * this.#perUnit);
    const cy = Math.floor((y - this.#y0) * this.#perUnit);
    if (cx < 0 || cy < 0 || cx >= this.#columns || cy >= this.#rows) return 0;
    return this.depthIn(cy * this.#columns + cx, x, y);
  }

  /** Number of the cell a place lies in, or -1 where it is clear for certain. */
  cellAt(x: number, y: number): number {
    const cx = Math.floor((x - this.#x0) * this.#perUnit);
    const cy = Math.floor((y - this.#y0) * this.#perUnit);
    if (cx < 0 || cy < 0 || cx >= this.#columns || cy >= this.#rows) return -1;
    const cell = cy * this.#columns + cx;
    let start = this.#starts[cell];
    if (start < 0) start = this.#fill(cell);
    return start === 0 ? -1 : cell;
  }

  /** No place in a cell is less deep than this. */
  floorOf(cell: number): number {
    return this.#floors[cell];
  }

  /** Depth of a place of which the cell is known, see {@link cellAt}. */
  depthIn(cell: number, x: number, y: number): number {
    let at = this.#starts[cell];
    if (at < 0) at = this.#fill(cell);
    if (at === 0) return 0;
    const items = this.#items;
    const to = at + items[at];
    const sides = this.#sides;
    let best = Infinity;
    let sign = 1;
    while (at < to) {
      at += 1;
      const e = items[at] * STRIDE;
      const px = x - sides[e];
      const py = y - sides[e + 1];
      const ux = sides[e + 2];
      const uy = sides[e + 3];
      const t = px * ux + py * uy;
      if (t < 0) {
        const d = px * px + py * py;
        if (d < best) {
          best = d;
          sign = sides[e + 5];
        }
      } else if (t > sides[e + 4]) {
        const qx = px - ux * sides[e + 4];
        const qy = py - uy * sides[e + 4];
        const d = qx * qx + qy * qy;
        if (d < best) {
          best = d;
          sign = sides[e + 6];
        }
      } else {
        const s = ux * py - uy * px;
        const d = s * s;
        if (d < best) {
          best = d;
          sign = s > 0 ? 1 : -1;
        }
      }
    }
    if (this.#floors[cell] > 0) sign = 1;
    const depth = sign * Math.sqrt(best) + this.#clear;
    return depth > 0 ? depth : 0;
  }

  /**
   * Sides whose line passes within `reach` of a place, into `out` from `count` on.
   * @returns the new count; never more than `out` holds.
   */
  nearSides(x: number, y: number, reach: number, out: NearSide[], count: number): number {
    const cx = Math.floor((x - this.#x0) * this.#perUnit);
    const cy = Math.floor((y - this.#y0) * this.#perUnit);
    if (cx < 0 || cy < 0 || cx >= this.#columns || cy >= this.#rows) return count;
    const cell = cy * this.#columns + cx;
    const s = this.#sides;
    let found = count;
    let at = this.#starts[cell];
    if (at < 0) at = this.#fill(cell);
    const to = at + this.#items[at];
    while (at < to && found < out.length) {
      at += 1;
      const e = this.#items[at] * STRIDE;
      const px = x - s[e];
      const py = y - s[e + 1];
      const ux = s[e + 2];
      const uy = s[e + 3];
      const t = px * ux + py * uy;
      if (t < -reach || t > s[e + 4] + reach) continue;
      const inside = ux * py - uy * px;
      if (inside > reach || inside < -reach) continue;
      const near = out[found];
      near.inside = inside + this.#clear;
      near.nx = uy;
      near.ny = -ux;
      found += 1;
    }
    return found;
  }

  /** Number of the side that ends where side `e` begins. */
  #before(e: number): number {
    const s = this.#sides;
    if (e > 0) {
      const b = (e - 1) * STRIDE;
      if (isEnd(s, b, s[e * STRIDE], s[e * STRIDE + 1])) return e - 1;
    }
    let last = e;
    while (
      (last + 1) * STRIDE < s.length &&
      isEnd(s, last * STRIDE, s[(last + 1) * STRIDE], s[(last + 1) * STRIDE + 1])
    )
      last += 1;
    return last;
  }

  /** Lists the sides that can be the nearest to a place in a cell. @returns where the list begins, 0 for an empty one. */
  #fill(at: number): number {
    const half = this.#cell * Math.SQRT1_2;
    const row = Math.floor(at / this.#columns);
    const column = at - row * this.#columns;
    const near = this.#sidesOfBlock(row >> BLOCK_BITS, column >> BLOCK_BITS);
    const sides = this.#sides;
    SCAN.look(sides, this.#x0 + (column + 0.5) * this.#cell, this.#y0 + (row + 0.5) * this.#cell, near);
    const { distance, sign } = SCAN;
    if (sign < 0 && distance > half + this.#clear + 1) return (this.#starts[at] = 0);
    if (sign > 0 && distance > half) this.#floors[at] = 0.999999 * (distance - half);
    const start = this.#used;
    if (start + 1 + near.length > this.#items.length) {
      const larger = new Uint16Array(2 * (start + 1 + near.length));
      larger.set(this.#items);
      this.#items = larger;
    }
    const isDeep = sign > 0 && distance > DEEP * half;
    const count = isDeep
      ? SCAN.nearestTwo(near, distance + half, this.#items, start + 1)
      : SCAN.within(near, distance + 2 * half + 1, this.#items, start + 1);
    this.#items[start] = count;
    this.#used = start + 1 + count;
    return (this.#starts[at] = start);
  }

  /** The sides that can be the nearest to a place in a block of cells. */
  #sidesOfBlock(row: number, column: number): Uint16Array {
    const at = row * ((this.#columns + BLOCK - 1) >> BLOCK_BITS) + column;
    const known = this.#blocks[at];
    if (known !== undefined) return known;
    const size = BLOCK * this.#cell;
    SCAN.look(this.#sides, this.#x0 + (column + 0.5) * size, this.#y0 + (row + 0.5) * size, this.#all);
    const near = new Uint16Array(this.#all.length);
    const count = SCAN.within(this.#all, SCAN.distance + 2 * size * Math.SQRT1_2 + 1, near, 0);
    return (this.#blocks[at] = near.slice(0, count));
  }
}

/** One for all: nobody asks it twice about the same look. */
const SCAN = new SideScan();

const isEnd = (s: Float64Array, e: number, x: number, y: number): boolean =>
  Math.abs(s[e] + s[e + 2] * s[e + 4] - x) < 0.5 && Math.abs(s[e + 1] + s[e + 3] * s[e + 4] - y) < 0.5;
