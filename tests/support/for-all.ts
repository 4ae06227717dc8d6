import * as fc from 'fast-check';

export interface ForAllOptions {
  /** How many values are tried. */
  readonly runs?: number;
  /** The same seed tries the same values. Environment variable FOAMLOFT_SEED overrules it. */
  readonly seed?: number;
}

/** How long a failing value is made simpler, ms. */
const SHRINK_TIME_MS = 3000;

/**
 * Checks a property on seeded random values, and makes a failing one simpler: fast-check moves the numbers that were drawn towards 0
 * and draws fewer of them, as long as the check goes on failing. The message gives seed, run, value and what the check said.
 * @param gen    makes a value from numbers in [0, 1), evenly spread
 * @param check  throws when the property does not hold
 */
export async function forAll<T>(
  gen: (rand: () => number) => T,
  check: (value: T) => void | Promise<void>,
  options: ForAllOptions = {},
): Promise<void> {
  const seed = Number(process.env.FOAMLOFT_SEED ?? options.seed ?? 1);
  let first: { readonly value: T; readonly atMs: number } | undefined;
  let last: { readonly value: T; readonly error: unknown } | undefined;
  const property = fc.asyncProperty(fc.gen(), async (draw) => {
    if (first && performance.now() - first.atMs > SHRINK_TIME_MS) return;
    const value = gen(() => draw(uniform32) / 2 ** 32);
    try {
      await check(value);
    } catch (error) {
      first ??= { value, atMs: performance.now() };
      last = { value, error };
      throw error;
    }
  });
  const outcome = await fc.check(property, { seed, numRuns: options.runs ?? 100 });
  if (!outcome.failed) return;
  if (!first || !last) throw outcome.errorInstance; // the generator itself failed
  throw new Error(
    [
      `forAll failed with seed ${seed} in run ${outcome.numRuns}, made simpler ${outcome.numShrinks} times.`,
      `value: ${describeValue(last.value)}`,
      ...(outcome.numShrinks > 0 ? [`first failing value: ${describeValue(first.value)}`] : []),
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
