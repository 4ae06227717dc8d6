/** off: this browser keeps nothing. keeping: not all files are there yet. kept: the window needs no network. */
export type Keeping = 'off' | 'keeping' | 'kept';

/** How far the window is without a network, for all that show it; tells of every change by a `change` event. */
export class OfflineState extends EventTarget {
  #keeping: Keeping = 'off';
  #install: (() => void) | null = null;

  get keeping(): Keeping {
    return this.#keeping;
  }
  /** Has the browser ask whether to install the window as a program of its own; null where it offers no such thing now. */
  get install(): (() => void) | null {
    return this.#install;
  }

  set(patch: { readonly keeping?: Keeping; readonly install?: (() => void) | null }): void {
    this.#keeping = patch.keeping ?? this.#keeping;
    if (patch.install !== undefined) this.#install = patch.install;
    this.dispatchEvent(new Event('change'));
  }
}

/** That of this window. */
export const OFFLINE = new OfflineState();
