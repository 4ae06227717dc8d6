/**
 * A long computation cut into stretches of a few milliseconds: it yields between them and returns its result at the end. One text of it
 * then serves those who want it at once and those who must let others run meanwhile.
 */
export type Stepwise<T> = Generator<undefined, T, undefined>;

/** Runs all stretches in a row. */
export function runAtOnce<T>(job: Stepwise<T>): T {
  for (;;) {
    const next = job.next();
    if (next.done === true) return next.value;
  }
}

/**
 * Runs stretch after stretch.
 * @param pause  called and awaited between them; throws to call the job off.
 */
export async function runWithPauses<T>(job: Stepwise<T>, pause: () => Promise<void> | undefined): Promise<T> {
  for (;;) {
    const next = job.next();
    if (next.done === true) return next.value;
    await pause();
  }
}

/**
 * Does things by number, so many in each stretch.
 * @param use  does those from `from` up to, not including, `to`.
 */
export function* inStretches(count: number, most: number, use: (from: number, to: number) => void): Stepwise<void> {
  for (let from = 0; from < count; from += most) {
    use(from, Math.min(from + most, count));
    yield;
  }
}
