/** Cells along the longer side of a no-fit area. */
const CELLS = 64;
/** Cells along a block of them. */
const BLOCK = 8;

/** Numbers kept for a side: start x y, direction x y, length, +1 / -1 at its two ends. */
const STRIDE = 7;

/** Sides kept for a cell deep inside, where only a good guess of the depth is needed. */
const DEEP_SIDES = 2;
/** From so many half diagonals of a cell inward it is deep. */
const DEEP = 4;

/** A side near a place: the place lies `inside` by so much (outside where negative), and gets out along `nx`, `ny`. */
export interface NearSide {
  inside: number;
  nx: number;
  ny: number;
}

/**
 * How deep a place lies inside an area, asked millions of times: a grid over the area whose every cell names the few sides that can be the
 * nearest to a place in it. Exact near the border; deep inside a side or two may be missed.
 *
 *     +----+----+----+      cell 0: empty, clear of the area
 *     | 0  | ab | b  |      cell 1: sides a and b
 *     +----+--\-+----+
 */
export class DepthGrid {
  readonly #x0: number;
  readonly #y0: number;
  readonly #perUnit: number;
  readonly #columns: number;
  readonly #rows: number;
  readonly #starts: Int32Array;
  readonly #items: Uint16Array;
  /** 1 where a whole cell lies inside. */
  readonly #within: Uint8Array;
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
    const cell = size / CELLS;
    this.#x0 = x0 - edge;
    this.#y0 = y0 - edge;
    this.#perUnit = 1 / cell;
    this.#columns = Math.max(1, Math.ceil((x1 - x0 + 2 * edge) / cell));
    this.#rows = Math.max(1, Math.ceil((y1 - y0 + 2 * edge) / cell));
    const filled = this.#fill(cell);
    this.#starts = filled.starts;
    this.#items = filled.items;
    this.#within = filled.within;
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

  /** Depth of a place under the border that counts as clear; 0 where it is clear. */
  depth(x: number, y: number): number {
    const cx = Math.floor((x - this.#x0) * this.#perUnit);
    const cy = Math.floor((y - this.#y0) * this.#perUnit);
    if (cx < 0 || cy < 0 || cx >= this.#columns || cy >= this.#rows) return 0;
    const cell = cy * this.#columns + cx;
    let from = this.#starts[cell];
    const to = this.#starts[cell + 1];
    if (from === to) return 0;
    const sides = this.#sides;
    const items = this.#items;
    let best = Infinity;
    let sign = 1;
    for (; from < to; from += 1) {
      const e = items[from] * STRIDE;
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
    if (this.#within[cell] === 1) sign = 1;
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
    for (let k = this.#starts[cell]; k < this.#starts[cell + 1] && found < out.length; k += 1) {
      const e = this.#items[k] * STRIDE;
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

  /** Block by block: only the sides that can be nearest to a place in a block are asked for its cells. */
  #fill(cell: number): { starts: Int32Array; items: Uint16Array; within: Uint8Array } {
    const cells = this.#columns * this.#rows;
    const starts = new Int32Array(cells + 1);
    const within = new Uint8Array(cells);
    const lists = new Array<readonly number[] | undefined>(cells);
    const scan = new SideScan(this.#sides);
    const all = Array.from({ length: this.#sides.length / STRIDE }, (_, e) => e);
    const half = cell * Math.SQRT1_2;
    for (let row0 = 0; row0 < this.#rows; row0 += BLOCK) {
      for (let column0 = 0; column0 < this.#columns; column0 += BLOCK) {
        const middle = (BLOCK / 2) * cell;
        scan.at(this.#x0 + column0 * cell + middle, this.#y0 + row0 * cell + middle, all);
        const near = scan.within(scan.distance + 2 * BLOCK * half + 1, all);
        for (let row = row0; row < Math.min(row0 + BLOCK, this.#rows); row += 1) {
          for (let column = column0; column < Math.min(column0 + BLOCK, this.#columns); column += 1) {
            const at = row * this.#columns + column;
            scan.at(this.#x0 + (column + 0.5) * cell, this.#y0 + (row + 0.5) * cell, near);
            if (scan.sign < 0 && scan.distance > half + this.#clear + 1) continue;
            if (scan.sign > 0 && scan.distance > half) within[at] = 1;
            const isDeep = scan.sign > 0 && scan.distance > DEEP * half;
            lists[at] = isDeep
              ? scan.nearest(DEEP_SIDES, near, scan.distance + half)
              : scan.within(scan.distance + 2 * half + 1, near);
          }
        }
      }
    }
    let total = 0;
    for (let at = 0; at < cells; at += 1) {
      total += lists[at]?.length ?? 0;
      starts[at + 1] = total;
    }
    const items = new Uint16Array(total);
    for (let at = 0; at < cells; at += 1) items.set(lists[at] ?? [], starts[at]);
    return { starts, items, within };
  }
}

/** Distances from one place to many sides. */
class SideScan {
  readonly #sides: Float64Array;
  readonly #away: Float64Array;
  readonly #found: Nearest = { square: 0, sign: 1 };
  /** To the nearest side, and on which side of the border the place lies: 1 inside, -1 outside. */
  distance = 0;
  sign = -1;

  constructor(sides: Float64Array) {
    this.#sides = sides;
    this.#away = new Float64Array(sides.length / STRIDE);
  }

  /** Looks from a place at some of the sides. */
  at(x: number, y: number, among: readonly number[]): void {
    let least = Infinity;
    for (const e of among) {
      nearestOn(this.#sides, e * STRIDE, x, y, this.#found);
      this.#away[e] = this.#found.square;
      if (this.#found.square < least) {
        least = this.#found.square;
        this.sign = this.#found.sign;
      }
    }
    this.distance = Math.sqrt(least);
  }

  /** Those of the sides last looked at that are no farther than `most`. */
  within(most: number, among: readonly number[]): readonly number[] {
    return among.filter((e) => this.#away[e] <= most * most);
  }

  /** The `count` nearest of them, none farther than `most`. */
  nearest(count: number, among: readonly number[], most: number): readonly number[] {
    return [...this.within(most, among)].sort((a, b) => this.#away[a] - this.#away[b] || a - b).slice(0, count);
  }
}

interface Nearest {
  square: number;
  sign: number;
}

/** Squared distance to one side, and on which side of the border a place whose nearest side it is must lie. */
function nearestOn(s: Float64Array, e: number, x: number, y: number, out: Nearest): void {
  const px = x - s[e];
  const py = y - s[e + 1];
  const ux = s[e + 2];
  const uy = s[e + 3];
  const t = px * ux + py * uy;
  if (t < 0) {
    out.square = px * px + py * py;
    out.sign = s[e + 5];
  } else if (t > s[e + 4]) {
    out.square = (px - ux * s[e + 4]) ** 2 + (py - uy * s[e + 4]) ** 2;
    out.sign = s[e + 6];
  } else {
    const across = ux * py - uy * px;
    out.square = across * across;
    out.sign = across > 0 ? 1 : -1;
  }
}

/**
 * Sides of all rings. Where the nearest point of the border is a corner, the place lies outside when the border turns left there, else inside: the
 * last two numbers of a side say so for its ends.
 */
function sidesOf(rings: readonly Float64Array[]): Float64Array {
  const count = rings.reduce((sum, ring) => sum + ring.length / 2, 0);
  const sides = new Float64Array(count * STRIDE);
  let at = 0;
  for (const ring of rings) {
    const n = ring.length / 2;
    for (let i = 0; i < n; i += 1) {
      const j = (i + 1) % n;
      const [dx, dy] = [ring[2 * j] - ring[2 * i], ring[2 * j + 1] - ring[2 * i + 1]];
      const length = Math.sqrt(dx * dx + dy * dy);
      sides[at] = ring[2 * i];
      sides[at + 1] = ring[2 * i + 1];
      sides[at + 2] = dx / length;
      sides[at + 3] = dy / length;
      sides[at + 4] = length;
      sides[at + 5] = cornerSign(ring, (i + n - 1) % n, i, j);
      sides[at + 6] = cornerSign(ring, i, j, (j + 1) % n);
      at += STRIDE;
    }
  }
  return sides;
}

function cornerSign(ring: Float64Array, a: number, b: number, c: number): number {
  const turn =
    (ring[2 * b] - ring[2 * a]) * (ring[2 * c + 1] - ring[2 * b + 1]) -
    (ring[2 * b + 1] - ring[2 * a + 1]) * (ring[2 * c] - ring[2 * b]);
  return turn >= 0 ? -1 : 1;
}

const isEnd = (s: Float64Array, e: number, x: number, y: number): boolean =>
  Math.abs(s[e] + s[e + 2] * s[e + 4] - x) < 0.5 && Math.abs(s[e + 1] + s[e + 3] * s[e + 4] - y) < 0.5;
