import type { Work } from '../../src/base/work.ts';

/** Adds up the time between pauses under the phase that was being done, ms. */
export class PhaseClock implements Work {
  readonly ms = new Map<string, number>();
  #phase = 'start';
  #since = performance.now();

  pause(_done: number, text?: string): undefined {
    const now = performance.now();
    this.ms.set(this.#phase, (this.ms.get(this.#phase) ?? 0) + now - this.#since);
    this.#since = now;
    this.#phase = text ?? this.#phase;
    return undefined;
  }
}
