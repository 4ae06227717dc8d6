/** Groups that only ever grow together (Tarjan's union-find with path halving). */
export class DisjointSets {
  readonly #parent: Int32Array;

  /** @param count how many items, each a group of its own at first. */
  constructor(count: number) {
    this.#parent = new Int32Array(count).map((_, i) => i);
  }

  /** A number that all items of one group share. */
  find(item: number): number {
    const parent = this.#parent;
    while (parent[item] !== item) {
      parent[item] = parent[parent[item]];
      item = parent[item];
    }
    return item;
  }

  /** Makes two groups one; the lower number leads. False when they were one already. */
  join(a: number, b: number): boolean {
    const [x, y] = [this.find(a), this.find(b)];
    if (x === y) return false;
    this.#parent[Math.max(x, y)] = Math.min(x, y);
    return true;
  }
}
