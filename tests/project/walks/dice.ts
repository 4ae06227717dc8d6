import { seededRandom } from '../../../src/base/random.ts';

/** Seeded draws of the kinds that commands need. */
export class Dice {
  readonly #random: () => number;

  constructor(seed: number) {
    this.#random = seededRandom(seed);
  }

  /** A whole number from 0 to under `under`. */
  whole(under: number): number {
    return Math.floor(this.#random() * under);
  }

  between(least: number, most: number): number {
    return least + this.#random() * (most - least);
  }

  /** As a hand types it: to a tenth. */
  mm(least: number, most: number): number {
    return Math.min(most, Math.max(least, Math.round(this.between(least, most) * 10) / 10));
  }

  chance(share: number): boolean {
    return this.#random() < share;
  }

  pick<T>(list: readonly T[]): T {
    return list[this.whole(list.length)];
  }

  /** One of a list, or now and then something that is in none. */
  known<T>(list: readonly T[], other: T): T {
    return list.length === 0 || this.chance(0.05) ? other : this.pick(list);
  }

  several<T>(most: number, one: () => T): T[] {
    return Array.from({ length: this.whole(most + 1) }, one);
  }
}
