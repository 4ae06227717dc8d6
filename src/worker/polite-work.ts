import { nextTask } from '../base/next-task.ts';
import { Cancelled, type Work } from '../base/work.ts';
import type { Progress } from './workshop-api.ts';

/**
 * Least time between letting messages in, ms. A cancel is heard after this and the stretch in hand, of which the longest, building the tree
 * over a sculpt's triangles, takes 35 ms at 124k: within 50 ms in all. A breath takes less than 0.1 ms.
 */
const BREATH_MS = 10;

/** Work inside the worker: tells its progress, lets messages in every few milliseconds, and stops when called off. */
export class PoliteWork implements Work {
  #last = performance.now();
  #text = '';
  #done = 0;
  readonly #controller = new AbortController();
  readonly signal = this.#controller.signal;
  readonly #tell: (progress: Progress) => void;

  constructor(tell: (progress: Progress) => void) {
    this.#tell = tell;
  }

  /** How far it is, as it was told last, 0 to 1. */
  get done(): number {
    return this.#done;
  }

  cancel(): void {
    this.#controller.abort();
  }

  pause(done: number, text?: string): Promise<void> | undefined {
    this.#text = text ?? this.#text;
    this.#done = done;
    if (this.signal.aborted) throw new Cancelled();
    const now = performance.now();
    if (now - this.#last < BREATH_MS) return undefined;
    this.#tell({ done, text: this.#text });
    return nextTask().then(() => {
      this.#last = performance.now();
      if (this.signal.aborted) throw new Cancelled();
    });
  }
}
