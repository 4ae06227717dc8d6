/**
 * Brings what is laid over the bench into sight where the job sheet is scrolled together with it, on a small or much enlarged screen.
 * Taken away again it leaves the window where it was before, unless that was scrolled meanwhile.
 */
export class InSight {
  readonly #view: HTMLElement;
  /** How far down the window was before, and is since, px. */
  #before = 0;
  #since = NaN;

  constructor(view: HTMLElement) {
    this.#view = view;
  }

  bring(): void {
    if (scrollY !== this.#since) this.#before = scrollY;
    this.#view.scrollIntoView({ block: 'nearest' });
    this.#since = scrollY;
  }

  leave(): void {
    if (scrollY === this.#since) scrollTo({ top: this.#before });
  }
}
