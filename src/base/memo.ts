/**
 * Remembers the last results of a pure function by the identity of its inputs, at most `cap` of them.
 * Identity, not value: records are frozen, so the same object means the same content (house style, section 2).
 */
export class Memo<K extends readonly unknown[], V> {
  readonly #cap: number;
  readonly #entries: { key: K; value: V }[] = [];

  /** @param cap how many results to keep, at least 1. */
  constructor(cap: number) {
    if (!(cap >= 1)) throw new RangeError(`memo cap ${cap}`);
    this.#cap = cap;
  }

  /** The remembered value for exactly these inputs, or undefined. A hit moves to the front. */
  get(key: K): V | undefined {
    const at = this.#entries.findIndex((entry) => sameParts(entry.key, key));
    if (at < 0) return undefined;
    const [entry] = this.#entries.splice(at, 1) as [{ key: K; value: V }];
    this.#entries.unshift(entry);
    return entry.value;
  }

  /** Takes the place of what was remembered for the same inputs. */
  set(key: K, value: V): V {
    const at = this.#entries.findIndex((entry) => sameParts(entry.key, key));
    if (at >= 0) this.#entries.splice(at, 1);
    this.#entries.unshift({ key, value });
    if (this.#entries.length > this.#cap) this.#entries.pop();
    return value;
  }
}

function sameParts(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((part, i) => Object.is(part, b[i]));
}
