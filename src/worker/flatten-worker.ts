import { CrewDesk } from '../pipeline/crew-desk.ts';
import type { ToHand } from '../pipeline/crew-messages.ts';
import { PoliteWork } from './polite-work.ts';

const desk = new CrewDesk(
  (message, transfer) => self.postMessage(message, { transfer }),
  (tell) => new PoliteWork(({ done }) => tell(done)),
);

self.onmessage = (event: MessageEvent<ToHand>) => desk.take(event.data);
