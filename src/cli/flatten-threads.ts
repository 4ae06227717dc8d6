import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { StartHand } from '../pipeline/crew-hand.ts';
import type { FromHand } from '../pipeline/crew-messages.ts';

const MOST_THREADS = 8;

/**
 * Triangles in all from which threads are started: they are new in every run, and each has to warm up its code first. On two cores 50,000
 * and 124,000 triangles took no less time with threads.
 */
export const LEAST_TRIANGLES = 200_000;

/** As many threads as there are cores; none where there is only one, which this thread has. */
export function threadsOfMachine(): number {
  const cores = availableParallelism();
  return cores < 2 ? 0 : Math.min(MOST_THREADS, cores);
}

/** Starts a thread that lays patches flat, from the file beside the command line's. */
export const startThread: StartHand = (heard, failed) => {
  const thread = new Worker(new URL('./cli-thread.js', import.meta.url));
  thread.on('message', (message: FromHand) => heard(message));
  thread.on('error', failed);
  thread.on('exit', failed);
  return {
    post: (message, transfer) => thread.postMessage(message, transfer),
    end: () => void thread.terminate(),
  };
};
