import { Cancelled, type Work } from '../base/work.ts';
import { PoliteWork } from './polite-work.ts';
import type { Progress } from './workshop-api.ts';

/** How often it is looked whether more urgent work is done, ms. */
const LOOK_MS = 20;

/** Work in the background: it stands still while more urgent work goes on. */
export class WaitingWork implements Work {
  readonly #own: PoliteWork;
  readonly #isUrgent: () => boolean;
  readonly signal: AbortSignal;

  /**
   * @param isUrgent true while something else goes first.
   * @param tell     gets how far it is, now and then.
   */
  constructor(isUrgent: () => boolean, tell: (progress: Progress) => void = () => undefined) {
    this.#isUrgent = isUrgent;
    this.#own = new PoliteWork(tell);
    this.signal = this.#own.signal;
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
