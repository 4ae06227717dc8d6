/**
 * A queue that gives back the smallest key first; equal keys in order of their item, so that searches are the same on every run.
 */
export class MinHeap {
  #keys = new Float64Array(64);
  #items = new Float64Array(64);
  #size = 0;

  get size(): number {
    return this.#size;
  }

  /** @param key  a number, not NaN. */
  push(key: number, item: number): void {
    if (this.#size === this.#keys.length) {
      this.#keys = doubled(this.#keys);
      this.#items = doubled(this.#items);
    }
    const keys = this.#keys;
    const items = this.#items;
    // Larger ones on the way up move down into the hole, until the new one fits.
    let hole = this.#size++;
    while (hole > 0) {
      const parent = (hole - 1) >> 1;
      if (keys[parent] < key || (keys[parent] === key && items[parent] <= item)) break;
      keys[hole] = keys[parent];
      items[hole] = items[parent];
      hole = parent;
    }
    keys[hole] = key;
    items[hole] = item;
  }

  /** @throws RangeError when the queue is empty: ask `size` first. */
  pop(): { key: number; item: number } {
    if (this.#size === 0) throw new RangeError('empty queue');
    const keys = this.#keys;
    const items = this.#items;
    const top = { key: keys[0], item: items[0] };
    const last = --this.#size;
    const key = keys[last];
    const item = items[last];
    // Smaller ones move up into the hole, until the last one fits.
    for (let hole = 0; ;) {
      let child = 2 * hole + 1;
      if (child + 1 < last && isBefore(keys, items, child + 1, child)) child += 1;
      if (child >= last || key < keys[child] || (key === keys[child] && item <= items[child])) {
        keys[hole] = key;
        items[hole] = item;
        return top;
      }
      keys[hole] = keys[child];
      items[hole] = items[child];
      hole = child;
    }
  }
}

const isBefore = (keys: Float64Array, items: Float64Array, a: number, b: number): boolean =>
  keys[a] < keys[b] || (keys[a] === keys[b] && items[a] < items[b]);

function doubled(values: Float64Array): Float64Array<ArrayBuffer> {
  const longer = new Float64Array(2 * values.length);
  longer.set(values);
  return longer;
}
