import type { Workbench } from './workbench.ts';

/** Fetches the finished prop while it is looked at, and again when the result it was made of has changed. */
export class PropFeed {
  readonly #bench: Workbench;
  /** Number of the update whose prop was asked for last. */
  #asked = 0;

  constructor(bench: Workbench) {
    this.#bench = bench;
  }

  /** Must follow every change of the workbench. */
  follow(): void {
    const { view, bench, isStale } = this.#bench;
    if (view.look !== 'prop') {
      this.#asked = 0;
      if (view.prop !== null) this.#bench.setView({ prop: null });
      return;
    }
    if (isStale || bench.dryFit === null || bench.update === this.#asked) return;
    this.#asked = bench.update;
    void this.#fetch(bench.update);
  }

  async #fetch(update: number): Promise<void> {
    const prop = await this.#bench.workshop.prop();
    // A newer result has been asked for since, or nobody looks any more.
    if (this.#asked === update && this.#bench.view.look === 'prop') this.#bench.setView({ prop });
  }
}
