import * as fc from 'fast-check';
import { IS_LONG } from './long.ts';

export interface ForAllOptions {
  /** How many values are tried; left out, 100 in the long run and 25 every day, the first of the same. */
  readonly runs?: number;
  /** The same seed tries the same values. Environment variable FOAMLOFT_SEED overrules it. */
  readonly seed?: number;
}

/** How long a failing value is made simpler, ms: well within the time a test has. */
const SHRINK_TIME_MS = 2000;

/** A value the check failed on, and what it said. */
interface Failure<T> {
  readonly value: T;
  readonly error: unknown;
}

/**
 * Checks a property on seeded random values, and makes a failing one simpler: fast-check moves the numbers that were drawn towards 0
 * as long as the check goes on failing. The message gives seed, run, value and what the check said.
 * @param gen    makes a value from numbers in [0, 1), evenly spread
 * @param check  throws when the property does not hold
 */
export async function forAll<T>(
  gen: (rand: () => number) => T,
  check: (value: T) => void | Promise<void>,
  options: ForAllOptions = {},
): Promise<void> {
  const seed = Number(process.env.FOAMLOFT_SEED ?? options.seed ?? 1);
  const failures: Failure<T>[] = [];
  let run = 0;
  let stopAtMs = Infinity;
  let stop = (): void => {};
  const stopped = new Promise<void>((resolve) => (stop = resolve));
  const property = fc.asyncProperty(fc.gen(), async (draw) => {
    if (performance.now() > stopAtMs) {
      // fast-check would still go through all it has in mind, which may take longer than the test has: it waits here for ever.
      stop();
      await new Promise(() => {});
    }
    if (failures.length === 0) run += 1;
    const value = gen(() => draw(uniform32) / 2 ** 32);
    try {
      await check(value);
    } catch (error) {
      if (failures.length === 0) stopAtMs = performance.now() + SHRINK_TIME_MS;
      failures.push({ value, error });
      throw error;
    }
  });
  const outcome = await Promise.race([
    fc.check(property, { seed, numRuns: options.runs ?? (IS_LONG ? 100 : 25) }),
    stopped,
  ]);
  if (failures.length > 0) throw failureMessage(seed, run, failures);
  if (outcome?.failed) throw outcome.errorInstance; // the generator itself failed
}

function failureMessage(seed: number, run: number, failures: readonly Failure<unknown>[]): Error {
  const first = failures[0];
  const last = failures[failures.length - 1];
  return new Error(
    [
      `forAll failed with seed ${seed} in run ${run}, made simpler ${failures.length - 1} times.`,
      `value: ${describeValue(last.value)}`,
      ...(last === first ? [] : [`first failing value: ${describeValue(first.value)}`]),
      last.error instanceof Error ? last.error.message : String(last.error),
    ].join('\n'),
    { cause: last.error },
  );
}

/** 32 random bits, all equally likely: fast-check would rather try the ends of the range, which makes most geometry degenerate. */
const uniform32 = (): fc.Arbitrary<number> => UNIFORM;
const UNIFORM = fc.noBias(fc.integer({ min: 0, max: 2 ** 32 - 1 }));

function describeValue(value: unknown): string {
  const text = JSON.stringify(value, (_, inner: unknown) =>
    ArrayBuffer.isView(inner) && !(inner instanceof DataView) ? Array.from(inner as Float64Array) : inner,
  );
  if (text === undefined) return String(value);
  return text.length > 2000 ? `${text.slice(0, 2000)}… (${text.length} characters)` : text;
}
