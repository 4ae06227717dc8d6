import { nextTask } from '../base/next-task.ts';
import { Cancelled, type Work } from '../base/work.ts';

/** How long the main thread may be held before others get their turn, ms: well under the 50 ms that a hand can feel. */
const SLICE_MS = 10;

/** Work on the main thread in slices, so that the window never freezes. A job short enough runs through without a break. */
export class Slices implements Work {
  #until = performance.now() + SLICE_MS;
  #stopped = false;

  pause(): Promise<void> | undefined {
    if (this.#stopped) throw new Cancelled();
    return performance.now() < this.#until ? undefined : this.#rest();
  }

  /** The next pause throws Cancelled. */
  stop(): void {
    this.#stopped = true;
  }

  async #rest(): Promise<void> {
    await nextTask();
    this.#until = performance.now() + SLICE_MS;
    if (this.#stopped) throw new Cancelled();
  }
}
