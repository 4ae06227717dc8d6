import { seededRandom } from '../../src/base/random.ts';
import { mutated } from './mutate.ts';
import { below, oneOf, type Answer, type Random, type Target } from './target.ts';

/** Inputs whose answer was new, beside the seeds. */
const MOST_KEPT = 300;

/** Larger inputs are changed seldom: each costs what many small ones do. */
const SMALL_BYTES = 3000;
const LARGE_SHARE = 0.01;

/**
 * The inputs of one target: first its seeds as they are, then seeds and what was kept, changed or built by the rules of the format. The same seed
 * gives the same inputs, as long as they are answered the same.
 */
export class Inputs {
  readonly #target: Target;
  readonly #random: Random;
  readonly #seeds: readonly Uint8Array[];
  readonly #small: Uint8Array[];
  /** Seeds and kept ones that were read without a fault: most changes of others only end where those did. */
  readonly #good: Uint8Array[];
  readonly #large: readonly Uint8Array[];
  readonly #kinds = new Set<string>();
  #given = 0;

  private constructor(target: Target, seed: number, seeds: readonly Uint8Array[]) {
    this.#target = target;
    this.#random = seededRandom(seed);
    this.#seeds = seeds;
    this.#small = seeds.filter((one, i) => one.length <= SMALL_BYTES || i === 0);
    this.#good = [...this.#small];
    this.#large = seeds.filter((one) => one.length > SMALL_BYTES);
  }

  static async of(target: Target, seed: number): Promise<Inputs> {
    return new Inputs(target, seed, await target.seeds());
  }

  next(): Uint8Array {
    const at = this.#given;
    this.#given += 1;
    if (at < this.#seeds.length) return this.#seeds[at];
    const random = this.#random;
    const { grammar, words } = this.#target;
    if (grammar !== undefined && random() < 0.4) {
      const made = grammar(random, this.#good);
      return random() < 0.85 ? made : mutated(random, made, oneOf(random, this.#small), words);
    }
    const pool =
      this.#large.length > 0 && random() < LARGE_SHARE ? this.#large : random() < 0.6 ? this.#good : this.#small;
    return mutated(random, oneOf(random, pool), oneOf(random, this.#small), words);
  }

  /** An input whose answer is of a new kind is changed further; with many kept, each takes another's place. */
  answered(bytes: Uint8Array, { kind, isOk }: Answer): void {
    if (this.#kinds.has(kind) || bytes.length > SMALL_BYTES) return;
    this.#kinds.add(kind);
    if (isOk && this.#good.length < MOST_KEPT) this.#good.push(bytes);
    if (this.#small.length < MOST_KEPT) this.#small.push(bytes);
    else this.#small[this.#seeds.length + below(this.#random, this.#small.length - this.#seeds.length)] = bytes;
  }

  get kinds(): number {
    return this.#kinds.size;
  }
}
