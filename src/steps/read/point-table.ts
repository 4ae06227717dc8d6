import { GrowingFloats } from './growing.ts';

/**
 * Gives exactly equal points one number, counted by first appearance. Equal means the same three doubles; -0 equals 0.
 * An open-addressed hash table on the bits of the coordinates; which slot a point falls into never shows in the numbers.
 */
export class PointTable {
  readonly #points: GrowingFloats;
  /** Number of the point in each slot plus one, or 0. The length is a power of two. */
  #slots: Uint32Array;
  #count = 0;

  /** @param expected about how many different points will come. */
  constructor(expected: number) {
    this.#points = new GrowingFloats(3 * expected);
    this.#slots = new Uint32Array(slotCount(expected));
  }

  get count(): number {
    return this.#count;
  }

  /** x y z per number, without negative zeros. */
  get points(): Float64Array {
    return this.#points.view();
  }

  /** The number of a point, new or known. */
  numberOf(x: number, y: number, z: number): number {
    const px = x + 0;
    const py = y + 0;
    const pz = z + 0;
    const { data } = this.#points;
    const slots = this.#slots;
    const mask = slots.length - 1;
    let slot = hashOf(px, py, pz) & mask;
    for (;;) {
      const number = slots[slot] - 1;
      if (number < 0) break;
      if (data[3 * number] === px && data[3 * number + 1] === py && data[3 * number + 2] === pz) return number;
      slot = (slot + 1) & mask;
    }
    const number = this.#count;
    this.#points.push(px);
    this.#points.push(py);
    this.#points.push(pz);
    this.#count += 1;
    slots[slot] = this.#count;
    if (2 * this.#count > slots.length) this.#grow();
    return number;
  }

  #grow(): void {
    const slots = new Uint32Array(2 * this.#slots.length);
    const mask = slots.length - 1;
    const { data } = this.#points;
    for (let number = 0; number < this.#count; number += 1) {
      let slot = hashOf(data[3 * number], data[3 * number + 1], data[3 * number + 2]) & mask;
      while (slots[slot] !== 0) slot = (slot + 1) & mask;
      slots[slot] = number + 1;
    }
    this.#slots = slots;
  }
}

const slotCount = (expected: number): number => 2 ** Math.ceil(Math.log2(Math.max(16, 2 * expected)));

const DOUBLES = new Float64Array(3);
const WORDS = new Uint32Array(DOUBLES.buffer);

/** Mixes the 192 bits of three doubles into 32: multiply and fold, after the finaliser of MurmurHash3 (A. Appleby, public domain). */
function hashOf(x: number, y: number, z: number): number {
  DOUBLES[0] = x;
  DOUBLES[1] = y;
  DOUBLES[2] = z;
  let hash = 0;
  for (let i = 0; i < 6; i += 1) {
    hash = Math.imul(hash ^ WORDS[i], 0x85ebca6b);
    hash ^= hash >>> 15;
  }
  hash = Math.imul(hash, 0xc2b2ae35);
  return (hash ^ (hash >>> 16)) >>> 0;
}
