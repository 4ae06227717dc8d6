import { Cancelled, type Work } from '../base/work.ts';
import type { Progress } from './workshop-api.ts';

/** Longest stretch without letting messages in, ms: how soon a cancel is heard. */
const BREATH_MS = 20;

/** Work inside the worker: tells its progress, lets messages in every few milliseconds, and stops when called off. */
export class PoliteWork implements Work {
  #last = performance.now();
  #text = '';
  readonly #controller = new AbortController();
  readonly signal = this.#controller.signal;
  readonly #tell: (progress: Progress) => void;

  constructor(tell: (progress: Progress) => void) {
    this.#tell = tell;
  }

  cancel(): void {
    this.#controller.abort();
  }

  pause(done: number, text?: string): Promise<void> | undefined {
    this.#text = text ?? this.#text;
    if (this.signal.aborted) throw new Cancelled();
    const now = performance.now();
    if (now - this.#last < BREATH_MS) return undefined;
    this.#tell({ done, text: this.#text });
    return nextMessage().then(() => {
      this.#last = performance.now();
      if (this.signal.aborted) throw new Cancelled();
    });
  }
}

/** Resolves after waiting messages were handled: a posted message queues behind them, without a timer's least delay. */
function nextMessage(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}
