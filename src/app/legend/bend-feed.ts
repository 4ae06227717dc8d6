import type { Workbench } from '../workbench.ts';

/** Fetches how the foam bends while colours show it, and again when the result it was made of, or the sheet on the bench, is another. */
export class BendFeed {
  readonly #bench: Workbench;
  /** What was asked for last. */
  #asked = '';

  constructor(bench: Workbench) {
    this.#bench = bench;
  }

  /** Must follow every change of the workbench. */
  follow(): void {
    const { view, bench, isStale } = this.#bench;
    if (view.colouring !== 'bend') {
      this.#asked = '';
      if (view.bends !== null) this.#bench.setView({ bends: null });
      return;
    }
    const asking = `${bench.update} ${view.sheet}`;
    if (isStale || bench.pieces === null || asking === this.#asked) return;
    this.#asked = asking;
    void this.#fetch(asking, view.sheet);
  }

  async #fetch(asking: string, sheet: number): Promise<void> {
    const bends = await this.#bench.workshop.bendField(sheet);
    // A newer result has been asked for since, or nobody looks any more.
    if (this.#asked === asking && this.#bench.view.colouring === 'bend') this.#bench.setView({ bends });
  }
}
