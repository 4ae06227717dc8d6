import type { EarlyUpdate } from '../model/bench-view.ts';
import type { EarlyOutcome } from '../pipeline/outcome.ts';
import type { OnEarly } from './workshop-api.ts';

/** Nothing is sent ahead within so long of the beginning, ms: what is done by then needs no forerunner, and the first piece is to be seen within 150 ms. */
const FIRST_MS = 40;
/** Each wait is so many times the one before: drawing a large sculpt takes the screen as long as working it out. */
const SLOWER = 2;

/** Sends shapes ahead of the result of one run: a few times, and never while the screen has not taken the last ones. */
export class EarlyPost {
  readonly #onEarly: OnEarly;
  readonly #update: (early: EarlyOutcome, have: number) => EarlyUpdate;
  readonly #needsAll: boolean;
  #have: number;
  #latest: EarlyOutcome | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #waitMs = FIRST_MS;
  #isUnderWay = false;
  #wasSent = false;
  #isOver = false;

  /**
   * @param have      number of the last update the screen took.
   * @param needsAll  nothing is sent before every piece has a shape: the screen shows pieces, and none of them shall vanish.
   * @param update    makes the update of what there is so far.
   */
  constructor(
    onEarly: OnEarly,
    have: number,
    needsAll: boolean,
    update: (early: EarlyOutcome, have: number) => EarlyUpdate,
  ) {
    this.#onEarly = onEarly;
    this.#have = have;
    this.#needsAll = needsAll;
    this.#update = update;
    this.#wait();
  }

  /** Number of the last update the screen is known to have taken. */
  get have(): number {
    return this.#have;
  }

  offer(early: EarlyOutcome): void {
    if (this.#needsAll && !early.flats.every((flat, i) => flat !== null || early.isFinal[i])) return;
    this.#latest = early;
    this.#sendOn();
    // When all is laid flat the result itself is near: what cannot be sent now comes with it, if something was seen before.
    if (this.#wasSent && early.isFinal.every(Boolean)) this.#latest = null;
  }

  /** The run is over: nothing more is sent. */
  end(): void {
    this.#isOver = true;
    clearTimeout(this.#timer);
  }

  #wait(): void {
    this.#timer = setTimeout(() => {
      this.#timer = undefined;
      this.#sendOn();
    }, this.#waitMs);
    this.#waitMs *= SLOWER;
  }

  #sendOn(): void {
    const early = this.#latest;
    if (early === null || this.#isOver || this.#isUnderWay || this.#timer !== undefined) return;
    this.#latest = null;
    this.#isUnderWay = this.#wasSent = true;
    const update = this.#update(early, this.#have);
    void this.#onEarly(update).then((isTaken) => {
      this.#isUnderWay = false;
      if (isTaken) this.#have = update.number;
      if (!this.#isOver) this.#wait();
    });
  }
}
