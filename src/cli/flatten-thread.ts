import { parentPort } from 'node:worker_threads';
import { CrewDesk, type StoppableWork } from '../pipeline/crew-desk.ts';
import type { ToHand } from '../pipeline/crew-messages.ts';

/** How often it is told how far the work is, ms. */
const TELL_MS = 100;

if (parentPort === null) throw new Error('flatten-thread: started without a command line');
const port = parentPort;
const desk = new CrewDesk((message, transfer) => port.postMessage(message, transfer), beginWork);
port.on('message', (message: ToHand) => desk.take(message));

/** Work that never lets others run: the command line calls nothing off. */
function beginWork(tell: (done: number) => void): StoppableWork {
  let last = performance.now();
  return {
    pause(done) {
      const now = performance.now();
      if (now - last < TELL_MS) return undefined;
      last = now;
      tell(done);
      return undefined;
    },
    cancel: () => undefined,
  };
}
