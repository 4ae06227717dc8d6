import type { StartHand } from '../pipeline/crew-hand.ts';
import type { FromHand } from '../pipeline/crew-messages.ts';

/** Threads of a crew in a browser: two at least, so that the pipeline can answer while they work. */
const LEAST_HANDS = 2;
const MOST_HANDS = 8;

/** As many threads as this machine has cores, within reason. */
export const handsOfBrowser = (): number => Math.min(MOST_HANDS, Math.max(LEAST_HANDS, navigator.hardwareConcurrency));

/** Starts a worker that lays patches flat. */
export const startBrowserHand: StartHand = (heard, failed) => {
  const worker = new Worker(new URL('./flatten-worker.ts', import.meta.url), { type: 'module' });
  worker.onmessage = (event: MessageEvent<FromHand>) => heard(event.data);
  worker.onerror = (event) => {
    // The crew does the work elsewhere: nobody else needs to hear of it.
    event.preventDefault();
    failed();
  };
  worker.onmessageerror = failed;
  return {
    post: (message, transfer) => worker.postMessage(message, transfer),
    end: () => worker.terminate(),
  };
};
