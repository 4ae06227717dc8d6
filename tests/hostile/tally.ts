/** What came of many trials of one kind. */
export class Tally {
  readonly name: string;
  #runs = 0;
  #made = 0;
  readonly #stops = new Map<string, number>();
  readonly #told = new Map<string, number>();
  #totalMs = 0;
  #slowest = { ms: 0, which: '' };

  constructor(name: string) {
    this.name = name;
  }

  get runs(): number {
    return this.#runs;
  }

  get made(): number {
    return this.#made;
  }

  /** @param stop  the code it stopped with, null where it came to pieces. */
  add(which: string, ms: number, stop: string | null, told: Iterable<string>): void {
    this.#runs += 1;
    if (stop === null) this.#made += 1;
    else this.#stops.set(stop, (this.#stops.get(stop) ?? 0) + 1);
    for (const code of new Set(told)) this.#told.set(code, (this.#told.get(code) ?? 0) + 1);
    this.#totalMs += ms;
    if (ms > this.#slowest.ms) this.#slowest = { ms, which };
  }

  /** One line of figures, and one of what was told in how many runs. */
  toString(): string {
    const { ms, which } = this.#slowest;
    const list = (counts: ReadonlyMap<string, number>): string =>
      [...counts]
        .sort((a, b) => b[1] - a[1])
        .map(([code, count]) => `${code} ${count}`)
        .join(', ');
    return [
      `${this.name}: ${this.#runs} runs, ${this.#made} in pieces, stopped: ${list(this.#stops) || 'none'}; ${(this.#totalMs / Math.max(1, this.#runs)).toFixed(0)} ms each, slowest ${ms.toFixed(0)} ms (${which})`,
      `  told in so many runs: ${list(this.#told) || 'nothing'}`,
    ].join('\n');
  }
}
