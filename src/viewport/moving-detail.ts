/** A picture that is drawn later than this after it was asked for comes slowly, ms: two pictures of a usual screen are missed. */
const SLOW_MS = 34;
/** So many in a row: one alone may wait for something else. */
const SLOW_IN_A_ROW = 2;
/** Each step leaves so much of the fineness, and no more than this share of it is given up. */
const STEP = 0.7;
const LEAST = 0.34;

/** How finely a picture is drawn while it moves: ever coarser as long as pictures come slowly, finer again by a step with each rest. */
export class MovingDetail {
  #share = 1;
  #slow = 0;

  /** Share of the pixels along each side, 0.34 to 1. */
  get share(): number {
    return this.#share;
  }

  /** @param waitMs  from the wish for a picture of something that moves to its drawing. */
  drawn(waitMs: number): void {
    this.#slow = waitMs > SLOW_MS ? this.#slow + 1 : 0;
    if (this.#slow < SLOW_IN_A_ROW) return;
    this.#slow = 0;
    this.#share = Math.max(LEAST, this.#share * STEP);
  }

  /** Nothing moves any more. */
  rested(): void {
    this.#slow = 0;
    this.#share = Math.min(1, this.#share / STEP);
  }
}
