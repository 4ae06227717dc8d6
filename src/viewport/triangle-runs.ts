import type { Vector3 } from 'three';
import { distanceToCorners, hitCorners, type RayHit } from './ray.ts';

/** So many triangles share a box, and so many boxes the next larger one. */
const RUN = 16;
/** Cells along one side of the box that triangles are put in order by: 2 to this power, at most. */
const MOST_BITS = 6;

/**
 * Triangles in an order in which near ones come near, so that runs of them lie in small boxes. The order stays as they are bent and
 * moved; only the boxes are measured anew, which takes one walk over the corners.
 */
export class TriangleRuns {
  /** The triangles by the numbers they were given under, in order. */
  readonly order: Uint32Array;
  /** Boxes of one level after the other, runs of triangles first, each `min x y z, max x y z`. */
  readonly #boxes: Float32Array;
  /** Index of the first box of each level, and behind the last. */
  readonly #levels: readonly number[];

  /**
   * @param numbers   what each triangle is called.
   * @param triangles three local vertices each.
   * @param places    packed xyz per local vertex, where near triangles are near.
   */
  constructor(numbers: Uint32Array, triangles: Uint32Array, places: ArrayLike<number>) {
    this.order = inOrder(numbers, triangles, places);
    const levels = [0];
    for (let count = numbers.length; levels.length === 1 || count > 1;) {
      count = Math.ceil(count / RUN);
      levels.push(levels[levels.length - 1] + count);
    }
    this.#levels = levels;
    this.#boxes = new Float32Array(6 * levels[levels.length - 1]);
  }

  /**
   * Measures all boxes.
   * @param corners packed xyz, three corners a triangle.
   * @param offsets places of triangle 0 in `corners`: one for each side that is to lie in the boxes.
   */
  measure(corners: Float32Array, offsets: readonly number[]): void {
    const { order } = this;
    const boxes = this.#boxes;
    boxes.fill(Infinity);
    for (let box = 0; box < boxes.length; box += 6) boxes.fill(-Infinity, box + 3, box + 6);
    for (let first = 0; first < order.length; first += RUN) {
      const last = Math.min(first + RUN, order.length);
      // One variable for each side: this walk goes over every corner.
      let [lowX, lowY, lowZ, highX, highY, highZ] = [Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity];
      for (const offset of offsets) {
        for (let i = first; i < last; i += 1) {
          const start = offset + 9 * order[i];
          for (let c = start; c < start + 9; c += 3) {
            const x = corners[c];
            const y = corners[c + 1];
            const z = corners[c + 2];
            if (x < lowX) lowX = x;
            if (x > highX) highX = x;
            if (y < lowY) lowY = y;
            if (y > highY) highY = y;
            if (z < lowZ) lowZ = z;
            if (z > highZ) highZ = z;
          }
        }
      }
      boxes.set([lowX, lowY, lowZ, highX, highY, highZ], (6 * first) / RUN);
    }
    for (let level = 1; level + 1 < this.#levels.length; level += 1) {
      const [below, first] = [this.#levels[level - 1], this.#levels[level]];
      for (let i = 0; below + i < first; i += 1) {
        const from = 6 * (below + i);
        widen(boxes, 6 * (first + Math.floor(i / RUN)), boxes, from, boxes, from + 3);
      }
    }
  }

  /**
   * The nearest triangle that a ray meets, or null.
   * @param direction of length 1.
   * @param corners   as they were measured.
   * @param offsets   the sides to look at.
   * @param nearest   hits farther than this do not count.
   */
  hit(
    origin: Vector3,
    direction: Vector3,
    corners: Float32Array,
    offsets: readonly number[],
    nearest: number,
  ): RayHit | null {
    let found: RayHit | null = null;
    const boxes = this.#boxes;
    const enter = (level: number, first: number): void => {
      const start = this.#levels[level];
      const end = Math.min(start + first + RUN, this.#levels[level + 1]);
      for (let box = start + first; box < end; box += 1) {
        if (entryOf(origin, direction, boxes, 6 * box) >= (found?.distance ?? nearest)) continue;
        const inside = RUN * (box - start);
        if (level > 0) {
          enter(level - 1, inside);
          continue;
        }
        const run = this.order.subarray(inside, inside + RUN);
        for (const offset of offsets)
          found = hitCorners(origin, direction, corners, run, offset, found?.distance ?? nearest) ?? found;
      }
    };
    enter(this.#levels.length - 2, 0);
    return found;
  }

  /** How far the nearest triangle is from a place, or `most` where none is nearer. The rest as of {@link hit}. */
  distanceTo(place: Vector3, corners: Float32Array, offsets: readonly number[], most: number): number {
    const boxes = this.#boxes;
    let nearest = most;
    const enter = (level: number, first: number): void => {
      const start = this.#levels[level];
      const end = Math.min(start + first + RUN, this.#levels[level + 1]);
      for (let box = start + first; box < end; box += 1) {
        if (distanceToBox(place, boxes, 6 * box) >= nearest) continue;
        const inside = RUN * (box - start);
        if (level > 0) {
          enter(level - 1, inside);
          continue;
        }
        const run = this.order.subarray(inside, inside + RUN);
        for (const offset of offsets) nearest = distanceToCorners(place, corners, run, offset, nearest);
      }
    };
    enter(this.#levels.length - 2, 0);
    return nearest;
  }
}

/** How far a place is from a box (`min x y z, max x y z` from `at` on), 0 within it. */
function distanceToBox(place: Vector3, boxes: Float32Array, at: number): number {
  const [x, y, z] = [0, 1, 2].map((k) => {
    const p = place.getComponent(k);
    return Math.max(boxes[at + k] - p, 0, p - boxes[at + 3 + k]);
  });
  return Math.hypot(x, y, z);
}

/** How far along a ray it enters a box (`min x y z, max x y z` from `at` on); Infinity where it passes by. */
function entryOf(origin: Vector3, direction: Vector3, boxes: Float32Array, at: number): number {
  let [enters, leaves] = [0, Infinity];
  for (let k = 0; k < 3; k += 1) {
    const [o, d] = [origin.getComponent(k), direction.getComponent(k)];
    const [low, high] = [boxes[at + k] - o, boxes[at + 3 + k] - o];
    if (d === 0) {
      if (low > 0 || high < 0) return Infinity;
      continue;
    }
    const [near, far] = d > 0 ? [low / d, high / d] : [high / d, low / d];
    if (near > enters) enters = near;
    if (far < leaves) leaves = far;
  }
  return enters <= leaves ? enters : Infinity;
}

function widen(boxes: Float32Array, box: number, low: Float32Array, l: number, high: Float32Array, h: number): void {
  for (let k = 0; k < 3; k += 1) {
    if (low[l + k] < boxes[box + k]) boxes[box + k] = low[l + k];
    if (high[h + k] > boxes[box + 3 + k]) boxes[box + 3 + k] = high[h + k];
  }
}

/**
 * Triangles by the cell their middle lies in, cells in the order of interleaved bits.
 * G. M. Morton, A computer oriented geodetic data base and a new technique in file sequencing, 1966.
 */
function inOrder(numbers: Uint32Array, triangles: Uint32Array, places: ArrayLike<number>): Uint32Array {
  const count = numbers.length;
  const bits = Math.max(1, Math.min(MOST_BITS, Math.round(Math.log2(count + 1) / 2)));
  const least = [Infinity, Infinity, Infinity];
  const most = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < places.length; i += 1) {
    const k = i % 3;
    if (places[i] < least[k]) least[k] = places[i];
    if (places[i] > most[k]) most[k] = places[i];
  }
  const side = Math.max(...most.map((high, k) => high - least[k])) || 1;
  const cells = (1 << bits) - 1;
  const cellOf = new Uint32Array(count);
  const starts = new Uint32Array((1 << (3 * bits)) + 1);
  for (let t = 0; t < count; t += 1) {
    let cell = 0;
    for (let k = 0; k < 3; k += 1) {
      let sum = 0;
      for (let c = 3 * t; c < 3 * t + 3; c += 1) sum += places[3 * triangles[c] + k];
      const along = Math.round(((sum / 3 - least[k]) / side) * cells);
      for (let bit = 0; bit < bits; bit += 1) cell |= ((along >> bit) & 1) << (3 * bit + k);
    }
    cellOf[t] = cell;
    starts[cell + 1] += 1;
  }
  for (let cell = 1; cell < starts.length; cell += 1) starts[cell] += starts[cell - 1];
  const order = new Uint32Array(count);
  for (let t = 0; t < count; t += 1) order[starts[cellOf[t]]++] = numbers[t];
  return order;
}
