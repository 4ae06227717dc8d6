/**
 * Brings something to where it is wanted, one place after the other: those passed while it was on its way to one are left out, and the latest is
 * always reached.
 */
export class Follow<Place> {
  readonly #bring: (place: Place) => Promise<void>;
  #wanted: { readonly place: Place } | null = null;
  #isUnderWay = false;

  /** @param bring  resolves once it is there and shown. */
  constructor(bring: (place: Place) => Promise<void>) {
    this.#bring = bring;
  }

  to(place: Place): void {
    this.#wanted = { place };
    if (!this.#isUnderWay) void this.#follow();
  }

  /** It stays where it is, or comes to where it is on its way to. */
  stay(): void {
    this.#wanted = null;
  }

  async #follow(): Promise<void> {
    this.#isUnderWay = true;
    try {
      while (this.#wanted !== null) {
        const { place } = this.#wanted;
        this.#wanted = null;
        await this.#bring(place);
      }
    } finally {
      this.#isUnderWay = false;
    }
  }
}
