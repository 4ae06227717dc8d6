/**
 * A queue that gives back the smallest key first; equal keys in order of their item, so that searches are the same on every run.
 */
export class MinHeap {
  readonly #keys: number[] = [];
  readonly #items: number[] = [];

  get size(): number {
    return this.#keys.length;
  }

  push(key: number, item: number): void {
    let at = this.#keys.length;
    this.#keys.push(key);
    this.#items.push(item);
    while (at > 0) {
      const parent = (at - 1) >> 1;
      if (!this.#before(at, parent)) break;
      this.#swap(at, parent);
      at = parent;
    }
  }

  /** @throws RangeError when the queue is empty: ask `size` first. */
  pop(): { key: number; item: number } {
    if (this.#keys.length === 0) throw new RangeError('empty queue');
    const top = { key: this.#keys[0], item: this.#items[0] };
    const last = this.#keys.length - 1;
    this.#swap(0, last);
    this.#keys.pop();
    this.#items.pop();
    for (let at = 0; ;) {
      const left = 2 * at + 1;
      const right = left + 1;
      let least = at;
      if (left < last && this.#before(left, least)) least = left;
      if (right < last && this.#before(right, least)) least = right;
      if (least === at) return top;
      this.#swap(at, least);
      at = least;
    }
  }

  #before(a: number, b: number): boolean {
    return this.#keys[a] < this.#keys[b] || (this.#keys[a] === this.#keys[b] && this.#items[a] < this.#items[b]);
  }

  #swap(a: number, b: number): void {
    [this.#keys[a], this.#keys[b]] = [this.#keys[b], this.#keys[a]];
    [this.#items[a], this.#items[b]] = [this.#items[b], this.#items[a]];
  }
}
