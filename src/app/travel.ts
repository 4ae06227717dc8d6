/** How long the pieces take from one stop to the next, ms (screen design: a piece rolls flat in 400 ms). */
const MS_PER_STOP = 400;

/** Moves the slider smoothly to a stop; at once where motion is unwanted. */
export class Travel {
  #frame = 0;

  /** @param set receives each place on the way. */
  constructor(readonly set: (stage: number) => void) {}

  go(from: number, to: number): void {
    this.stop();
    if (from === to) return;
    if (window.matchMedia('(prefers-reduced-motion: reduce)').matches) return this.set(to);
    const start = performance.now();
    const duration = MS_PER_STOP * Math.abs(to - from);
    const step = (now: number): void => {
      const share = Math.min(1, (now - start) / duration);
      this.set(from + (to - from) * ease(share));
      if (share < 1) this.#frame = requestAnimationFrame(step);
    };
    this.#frame = requestAnimationFrame(step);
  }

  jump(to: number): void {
    this.stop();
    this.set(to);
  }

  stop(): void {
    cancelAnimationFrame(this.#frame);
  }
}

/** Slow, fast, slow: a hand that lays something down. */
const ease = (share: number): number => share * share * (3 - 2 * share);
