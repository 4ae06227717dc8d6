/** A packed list of doubles that grows by half its size, so that a file is read without knowing beforehand how much it holds. */
export class GrowingFloats {
  data: Float64Array;
  length = 0;

  constructor(capacity: number) {
    this.data = new Float64Array(Math.max(16, capacity));
  }

  push(value: number): void {
    if (this.length === this.data.length) {
      const larger = new Float64Array(grown(this.length));
      larger.set(this.data);
      this.data = larger;
    }
    this.data[this.length] = value;
    this.length += 1;
  }

  /** What was pushed so far, without copying. */
  view(): Float64Array {
    return this.data.subarray(0, this.length);
  }
}

/** The same for whole numbers from 0 to 2^32 - 1. */
export class GrowingNumbers {
  data: Uint32Array;
  length = 0;

  constructor(capacity: number) {
    this.data = new Uint32Array(Math.max(16, capacity));
  }

  push(value: number): void {
    if (this.length === this.data.length) {
      const larger = new Uint32Array(grown(this.length));
      larger.set(this.data);
      this.data = larger;
    }
    this.data[this.length] = value;
    this.length += 1;
  }

  view(): Uint32Array {
    return this.data.subarray(0, this.length);
  }
}

const grown = (length: number): number => length + (length >> 1) + 16;
