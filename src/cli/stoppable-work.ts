import type { Work } from '../base/work.ts';

/** The machine is let breathe so often, ms: an interrupt is heard within this. */
const BREATH_MS = 50;

/**
 * Work that hears an interrupt: the first asks it to stop where it is, a second ends the program as usual.
 * `end` must be called, or the interrupt stays caught.
 */
export function stoppableWork(): Work & { isStopped(): boolean; end(): void } {
  let stopped = false;
  let last = performance.now();
  const stop = (): void => {
    stopped = true;
  };
  process.once('SIGINT', stop);
  return {
    pause() {
      const now = performance.now();
      if (now - last < BREATH_MS) return undefined;
      return new Promise((resolve) => {
        setImmediate(() => {
          last = performance.now();
          resolve();
        });
      });
    },
    isStopped: () => stopped,
    end: () => {
      process.removeListener('SIGINT', stop);
    },
  };
}
