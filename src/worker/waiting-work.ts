import { Cancelled, type Work } from '../base/work.ts';
import { PoliteWork } from './polite-work.ts';

/** How often it is looked whether more urgent work is done, ms. */
const LOOK_MS = 20;

/** Work in the background: it stands still while more urgent work goes on. */
export class WaitingWork implements Work {
  readonly #own = new PoliteWork(() => undefined);
  readonly #isUrgent: () => boolean;
  readonly signal = this.#own.signal;

  /** @param isUrgent true while something else goes first. */
  constructor(isUrgent: () => boolean) {
    this.#isUrgent = isUrgent;
  }

  cancel(): void {
    this.#own.cancel();
  }

  pause(done: number, text?: string): Promise<void> | undefined {
    return this.#isUrgent() ? this.#wait() : this.#own.pause(done, text);
  }

  async #wait(): Promise<void> {
    while (this.#isUrgent()) {
      if (this.signal.aborted) throw new Cancelled();
      await new Promise((resolve) => setTimeout(resolve, LOOK_MS));
    }
    if (this.signal.aborted) throw new Cancelled();
  }
}
