import { parentPort } from 'node:worker_threads';
import { HomeHand } from '../pipeline/nest-crew.ts';
import type { FromNestThread, ToNestThread } from './nest-threads.ts';

if (parentPort === null) throw new Error('nest-thread: started without a command line');
const port = parentPort;
let hand: HomeHand | null = null;

port.on('message', (message: ToNestThread) => {
  if (message.kind === 'begin') {
    const { task, seed, number, stop, endMs } = message;
    const isOver = (): boolean => Atomics.load(stop, 0) === 1 || performance.timeOrigin + performance.now() >= endMs;
    hand = new HomeHand(task, seed, number, isOver);
    return;
  }
  if (hand === null) throw new Error('nest-thread: told to run before it was told what');
  void hand.run(message.untilMoves, message.offered).then((state) => port.postMessage(state satisfies FromNestThread));
});
