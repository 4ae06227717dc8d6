import { inStretches, type Stepwise } from '../../base/stepwise.ts';

/** Two points and the square of their distance. */
export interface NearPairs {
  readonly first: Uint32Array;
  readonly second: Uint32Array;
  readonly squared: Float64Array;
}

/** Points compared with their neighbours in one stretch: a few milliseconds. */
const STRETCH_POINTS = 1 << 14;

/** Side of a grid cell in tolerances. Larger cells hold more points that are not near, smaller ones make more points look next door. */
const CELL_TOLERANCES = 16;

/** How many others of one cell a point is compared with: those that follow it in number. */
const MOST_COMPARED = 12;

/**
 * Finds pairs of points no farther apart than `tolerance`, in stretches, by a grid of cells. A point is compared with its own cell and with those that
 * the cube of `tolerance` round it reaches.
 *
 * Where more than {@link MOST_COMPARED} points crowd into one cell each is only compared with that many that follow it in number. Points
 * of a crowd that are all near each other still hang together through their pairs; in a cell that is crowded but wider than the
 * tolerance some pairs may be missed. So the work stays within a fixed share of the number of points.
 * @param xyz        packed points, at least one.
 * @param members    the points to look at, ascending.
 * @param tolerance  > 0, and at least 1e-9 of the extent of the points.
 * @returns pairs with the lower number first, sorted by distance, then by number.
 */
export function* nearPairSteps(xyz: Float64Array, members: Uint32Array, tolerance: number): Stepwise<NearPairs> {
  const grid = new PointGrid(xyz, members, CELL_TOLERANCES * tolerance);
  const first: number[] = [];
  const second: number[] = [];
  const squared: number[] = [];
  const limit = tolerance * tolerance;
  const compare = (p: number, q: number): void => {
    const dx = xyz[3 * p] - xyz[3 * q];
    const dy = xyz[3 * p + 1] - xyz[3 * q + 1];
    const dz = xyz[3 * p + 2] - xyz[3 * q + 2];
    const d = dx * dx + dy * dy + dz * dz;
    if (d > limit) return;
    first.push(p);
    second.push(q);
    squared.push(d);
  };
  yield;
  yield* inStretches(members.length, STRETCH_POINTS, (from, to) => {
    for (let i = from; i < to; i += 1) grid.visitAfter(members[i], tolerance, MOST_COMPARED, compare);
  });
  const order = Uint32Array.from(first.keys()).sort(
    (i, j) => squared[i] - squared[j] || first[i] - first[j] || second[i] - second[j],
  );
  return {
    first: Uint32Array.from(order, (i) => first[i]),
    second: Uint32Array.from(order, (i) => second[i]),
    squared: Float64Array.from(order, (i) => squared[i]),
  };
}

/** Points sorted into cells; an open-addressed table leads from a cell's key to its row of points, which ascend. */
class PointGrid {
  readonly #xyz: Float64Array;
  readonly #size: number;
  readonly #least = [Infinity, Infinity, Infinity];
  readonly #keys: Float64Array;
  /** For each slot the row of points it holds: `#points[#from[slot] .. #from[slot] + #count[slot])`. */
  readonly #from: Uint32Array;
  readonly #count: Uint32Array;
  readonly #points: Uint32Array;

  constructor(xyz: Float64Array, members: Uint32Array, size: number) {
    this.#xyz = xyz;
    this.#size = size;
    for (const p of members) {
      for (let axis = 0; axis < 3; axis += 1) this.#least[axis] = Math.min(this.#least[axis], xyz[3 * p + axis]);
    }
    const slots = 2 ** Math.ceil(Math.log2(2 * members.length + 16));
    this.#keys = new Float64Array(slots).fill(-1);
    this.#count = new Uint32Array(slots);
    const slotOf = new Uint32Array(members.length);
    for (let i = 0; i < members.length; i += 1) {
      const key = this.#keyOf(members[i]);
      const slot = this.#slotOf(key);
      this.#keys[slot] = key;
      this.#count[slot] += 1;
      slotOf[i] = slot;
    }
    this.#from = new Uint32Array(slots);
    for (let slot = 0, at = 0; slot < slots; slot += 1) {
      this.#from[slot] = at;
      at += this.#count[slot];
    }
    const fill = this.#from.slice();
    this.#points = new Uint32Array(members.length);
    for (let i = 0; i < members.length; i += 1) this.#points[fill[slotOf[i]]++] = members[i];
  }

  /** Hands over the points numbered after `p` in the cells within `reach` of it, at most `most` of each cell. */
  visitAfter(p: number, reach: number, most: number, use: (p: number, q: number) => void): void {
    const [x, y, z] = [this.#xyz[3 * p], this.#xyz[3 * p + 1], this.#xyz[3 * p + 2]];
    const [x0, x1] = [this.#cell(x - reach, 0), this.#cell(x + reach, 0)];
    const [y0, y1] = [this.#cell(y - reach, 1), this.#cell(y + reach, 1)];
    const [z0, z1] = [this.#cell(z - reach, 2), this.#cell(z + reach, 2)];
    for (let cz = z0; cz <= z1; cz += 1) {
      for (let cy = y0; cy <= y1; cy += 1) {
        for (let cx = x0; cx <= x1; cx += 1) {
          const slot = this.#slotOf(keyOf(cx, cy, cz));
          const from = this.#from[slot];
          const to = from + this.#count[slot];
          const begin = firstAfter(this.#points, from, to, p);
          for (let i = begin; i < Math.min(to, begin + most); i += 1) use(p, this.#points[i]);
        }
      }
    }
  }

  #cell(value: number, axis: number): number {
    return Math.max(0, Math.floor((value - this.#least[axis]) / this.#size));
  }

  #keyOf(p: number): number {
    return keyOf(
      this.#cell(this.#xyz[3 * p], 0),
      this.#cell(this.#xyz[3 * p + 1], 1),
      this.#cell(this.#xyz[3 * p + 2], 2),
    );
  }

  /** The slot that holds a key, or the empty one where it would go. */
  #slotOf(key: number): number {
    const mask = this.#keys.length - 1;
    let slot = mixed(key) & mask;
    while (this.#keys[slot] !== key && this.#keys[slot] !== -1) slot = (slot + 1) & mask;
    return slot;
  }
}

/** One number for a cell: at most 62 500 cells lie along an axis (see the tolerance above), which 17 bits hold. */
const keyOf = (cx: number, cy: number, cz: number): number => cx + 0x20000 * (cy + 0x20000 * cz);

function mixed(key: number): number {
  let hash = Math.imul((key % 0x100000000) ^ Math.floor(key / 0x100000000), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return (hash ^ (hash >>> 16)) >>> 0;
}

/** First place in the ascending row `points[from .. to)` with a number over `p`. */
function firstAfter(points: Uint32Array, from: number, to: number, p: number): number {
  let [low, high] = [from, to];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (points[middle] > p) high = middle;
    else low = middle + 1;
  }
  return low;
}
