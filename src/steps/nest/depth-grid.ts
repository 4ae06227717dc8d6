/** Cells along the longer side of a no-fit area. */
const CELLS = 32;

/** Numbers kept for a side: start x y, direction x y, length, +1 / -1 at its two ends. */
const STRIDE = 7;

/** Sides kept for a cell deep inside, where only a good guess of the depth is needed. */
const DEEP_SIDES = 3;

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
      const [px, py, ux, uy] = [x - s[e], y - s[e + 1], s[e + 2], s[e + 3]];
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

  #fill(cell: number): { starts: Int32Array; items: Uint16Array; within: Uint8Array } {
    const sides = this.#sides;
    const count = sides.length / STRIDE;
    const half = cell * Math.SQRT1_2;
    const starts = new Int32Array(this.#columns * this.#rows + 1);
    const within = new Uint8Array(this.#columns * this.#rows);
    const items: number[] = [];
    const away = new Float64Array(count);
    const found: Nearest = { square: 0, sign: 1 };
    for (let row = 0; row < this.#rows; row += 1) {
      for (let column = 0; column < this.#columns; column += 1) {
        const x = this.#x0 + (column + 0.5) * cell;
        const y = this.#y0 + (row + 0.5) * cell;
        let [least, sign] = [Infinity, -1];
        for (let e = 0; e < count; e += 1) {
          nearestOn(sides, e * STRIDE, x, y, found);
          away[e] = found.square;
          if (found.square < least) {
            least = found.square;
            sign = found.sign;
          }
        }
        const distance = Math.sqrt(least);
        const isClear = sign < 0 && distance > half + this.#clear + 1;
        if (!isClear) {
          if (sign > 0 && distance > half) within[row * this.#columns + column] = 1;
          const isDeep = sign > 0 && distance > 3 * half;
          const most = distance + (isDeep ? 0.5 * half : 2 * half + 1);
          const from = items.length;
          for (let e = 0; e < count; e += 1) if (away[e] <= most * most) items.push(e);
          if (isDeep && items.length - from > DEEP_SIDES) {
            const nearest = items.splice(from).sort((a, b) => away[a] - away[b] || a - b);
            items.push(...nearest.slice(0, DEEP_SIDES));
          }
        }
        starts[row * this.#columns + column + 1] = items.length;
      }
    }
    return { starts, items: Uint16Array.from(items), within };
  }
}

interface Nearest {
  square: number;
  sign: number;
}

/** Squared distance to one side, and on which side of the border a place whose nearest side it is must lie. */
function nearestOn(s: Float64Array, e: number, x: number, y: number, out: Nearest): void {
  const [px, py, ux, uy] = [x - s[e], y - s[e + 1], s[e + 2], s[e + 3]];
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
