import type { Workbench } from './workbench.ts';

/** Longest wait for pieces of one place before what is dragged follows the pointer to the next, ms. */
const MOST_WAIT_MS = 400;

/** Waits until the pieces of the document in force are on the screen, or long enough. */
export function piecesShown(workbench: Workbench): Promise<void> {
  const { bench } = workbench;
  return new Promise((resolve) => {
    const look = (): void => {
      if (workbench.isStale && workbench.bench === bench) return;
      done();
    };
    const timer = setTimeout(() => done(), MOST_WAIT_MS);
    const done = (): void => {
      clearTimeout(timer);
      workbench.removeEventListener('change', look);
      resolve();
    };
    workbench.addEventListener('change', look);
  });
}
