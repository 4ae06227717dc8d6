/**
 * Brings something to where it is wanted, one place after the other: those passed while it was on its way to one are left out, and the latest is
 * always reached.
 */
export class Follow<Place> {
  readonly #bring: (place: Place) => Promise<void>;
  #wanted: { readonly place: Place } | null = null;
  #underWay: Promise<void> | null = null;

  /** @param bring  resolves once it is there and shown. */
  constructor(bring: (place: Place) => Promise<void>) {
    this.#bring = bring;
  }

  to(place: Place): void {
    this.#wanted = { place };
    this.#underWay ??= this.#follow();
  }

  /** It stays where it is, or comes to where it is on its way to. */
  stay(): void {
    this.#wanted = null;
  }

  /** Resolves once it is where it is wanted. */
  async there(): Promise<void> {
    await this.#underWay;
  }

  async #follow(): Promise<void> {
    try {
      while (this.#wanted !== null) {
        const { place } = this.#wanted;
        this.#wanted = null;
        await this.#bring(place);
      }
    } finally {
      this.#underWay = null;
    }
  }
}
