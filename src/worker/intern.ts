/** How many different values of one slice are remembered: as far as a maker goes back and forth. */
const KEPT = 64;

/**
 * Gives equal values one identity again. What crosses to the worker arrives as new objects; the steps remember by identity
 * (house style, section 2), so each slice of the document is replaced by the equal one that came first.
 */
export class Interner {
  readonly #known = new Map<string, unknown>();

  /** The first value that was equal to this one, slice by slice the same JSON. */
  same<T>(value: T): T {
    if (value === null || typeof value !== 'object') return value;
    const key = JSON.stringify(value);
    const known = this.#known.get(key) as T | undefined;
    if (known !== undefined) {
      // Freshly used goes last, so that the oldest is forgotten first.
      this.#known.delete(key);
      this.#known.set(key, known);
      return known;
    }
    this.#known.set(key, value);
    if (this.#known.size > KEPT) {
      const [oldest] = this.#known.keys();
      this.#known.delete(oldest);
    }
    return value;
  }
}
