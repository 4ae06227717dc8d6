import { takesLetters } from './keys.ts';

type Around = Element | ShadowRoot;

const TABBABLE = 'button, input:not([type="file"]), summary, [tabindex="0"]';

/** So many earlier places are kept in mind. */
const MOST_PLACES = 8;

/**
 * Keeps the keyboard near where it was when what had it goes or can no longer be used: else the next Tab would begin at the top of the window,
 * and a screen reader would say nothing. Whoever works with the pointer is left alone.
 */
export class FocusKeeper {
  /** From the control outward, the last place last. */
  #places: (readonly Around[])[] = [];
  #isByPointer = false;

  /** @param otherwise  takes the keyboard where nothing near is left. */
  constructor(readonly otherwise: () => void) {}

  start(): void {
    for (const [name, listener] of this.#listeners) window.addEventListener(name, listener, true);
  }

  stop(): void {
    for (const [name, listener] of this.#listeners) window.removeEventListener(name, listener, true);
  }

  readonly #listeners: readonly (readonly [string, (event: Event) => void])[] = [
    ['pointerdown', () => (this.#isByPointer = true)],
    ['keydown', () => (this.#isByPointer = false)],
    ['focusin', (event) => this.#note(event)],
    ['focusout', (event) => this.#lost(event as FocusEvent)],
  ];

  #note(event: Event): void {
    this.#places = [...this.#places, pathOf(event)].slice(-MOST_PLACES);
  }

  #lost(event: FocusEvent): void {
    if (event.relatedTarget !== null || this.#isByPointer) return;
    // Whoever takes a thing away may lead on by itself, once all is drawn.
    requestAnimationFrame(() => {
      if (document.activeElement === document.body && document.hasFocus()) this.#bringBack();
    });
  }

  #bringBack(): void {
    const last = this.#places.at(-1) ?? [];
    const gone = last.filter((at) => at instanceof ShadowRoot && !at.isConnected);
    const before = this.#places.findLast(
      ([control, ...around]) => isUsable(control) && !around.some((at) => gone.includes(at)),
    );
    const near = nearest(last);
    const place = gone.length > 0 ? (before?.[0] ?? near) : near;
    if (place === null) this.otherwise();
    else (place as HTMLElement).focus();
  }
}

const pathOf = (event: Event): readonly Around[] =>
  event.composedPath().filter((at): at is Around => at instanceof Element || at instanceof ShadowRoot);

/** A field that takes letters is none: they would be typed there, and ask nothing of the window any more. */
const isUsable = (control: Around): boolean =>
  control instanceof Element &&
  control.isConnected &&
  !control.matches(':disabled') &&
  !takesLetters(control) &&
  control.checkVisibility({ visibilityProperty: true });

/** The control next to where the keyboard was, in the smallest thing around it that still has one: after it, else the last before it. */
function nearest([lost, ...around]: readonly Around[]): Element | null {
  for (const at of around) {
    const left = [...at.querySelectorAll(TABBABLE)].filter((one) => one !== lost && isUsable(one));
    const isAfter = (one: Element): boolean =>
      (lost.compareDocumentPosition(one) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0;
    const next = lost.isConnected ? (left.find(isAfter) ?? left.at(-1)) : left.at(0);
    if (at.isConnected && next !== undefined) return next;
  }
  return null;
}
