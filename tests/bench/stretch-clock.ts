import type { Work } from '../../src/base/work.ts';

/** What a phase of a job took, ms. */
export interface PhaseStretches {
  /** Time in all. */
  readonly ms: number;
  /** The longest time between two pauses: as long may a call-off go unheard. */
  readonly longestMs: number;
  readonly pauses: number;
}

/** Notes how long a job works between its pauses, under the phase that was being done: what the pause before had named. */
export class StretchClock implements Work {
  readonly phases = new Map<string, PhaseStretches>();
  #phase = 'start';
  #since = performance.now();

  pause(_done: number, text?: string): undefined {
    const ms = performance.now() - this.#since;
    const { ms: sum, longestMs, pauses } = this.phases.get(this.#phase) ?? { ms: 0, longestMs: 0, pauses: 0 };
    this.phases.set(this.#phase, { ms: sum + ms, longestMs: Math.max(longestMs, ms), pauses: pauses + 1 });
    this.#phase = text ?? this.#phase;
    this.#since = performance.now();
    return undefined;
  }
}
