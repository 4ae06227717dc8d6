import { CrewDesk } from '../../src/pipeline/crew-desk.ts';
import type { StartHand } from '../../src/pipeline/crew-hand.ts';
import type { FromHand, ToHand } from '../../src/pipeline/crew-messages.ts';
import { PoliteWork } from '../../src/worker/polite-work.ts';

/** A message as it arrives in another thread: its own objects, a moment later. */
function carry<T>(message: T, transfer: ArrayBuffer[], take: (message: T) => void): void {
  const copy = structuredClone(message, { transfer });
  setImmediate(() => take(copy));
}

/** Hands that sit in this thread at desks of their own; what is said crosses as between threads. @param told  sees every message to a hand. */
export function nearHands(told: (hand: number, message: ToHand) => void = () => undefined): StartHand {
  let count = 0;
  return (heard) => {
    const hand = count;
    count += 1;
    let isEnded = false;
    const desk = new CrewDesk(
      (message, transfer) => carry(message, transfer, (copy) => !isEnded && heard(copy)),
      (tell) => new PoliteWork(({ done }) => tell(done)),
    );
    return {
      post: (message, transfer) =>
        carry(message, transfer, (copy) => {
          told(hand, copy);
          desk.take(copy);
        }),
      end: () => void (isEnded = true),
    };
  };
}

/** A hand that does nothing by itself: what it is told is kept, and the test says what it answers. */
export class PuppetHand {
  readonly told: ToHand[] = [];
  isEnded = false;
  constructor(
    readonly say: (message: FromHand) => void,
    readonly fail: () => void,
  ) {}

  /** Number of the task it was given last. */
  get task(): number {
    const last = this.told.findLast((message) => message.kind === 'solve');
    if (last === undefined) throw new Error('this hand was given nothing');
    return last.task;
  }
}

/** Starts puppets, kept in the order of starting. */
export function puppetHands(): { readonly hands: PuppetHand[]; readonly start: StartHand } {
  const hands: PuppetHand[] = [];
  return {
    hands,
    start: (heard, failed) => {
      const hand = new PuppetHand(heard, failed);
      hands.push(hand);
      return { post: (message) => hand.told.push(message), end: () => void (hand.isEnded = true) };
    },
  };
}
