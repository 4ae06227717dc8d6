import { turned, type Orbit } from './orbit.ts';

/** Once round in half a minute: slow enough to look at what goes by, rad per ms. */
const RATE = (2 * Math.PI) / 30_000;
/** One step where motion is unwanted. */
export const TURN_STEP = Math.PI / 4;
/** After a pause, as of a window that was hidden, it goes on where it was, ms. */
const LONGEST_MS = 100;

/** What the turntable needs of the studio. */
export interface TurnedView {
  readonly orbit: Orbit;
  readonly isReduced: boolean;
  setOrbit(orbit: Orbit): void;
}

/** Turns the view slowly round what it looks at, until anything is done with the picture. Where motion is unwanted it turns one step each time. */
export class Turntable {
  readonly #view: TurnedView;
  readonly #canvas: HTMLElement;
  #inputs: AbortController | null = null;
  #request = 0;

  constructor(canvas: HTMLElement, view: TurnedView) {
    this.#canvas = canvas;
    this.#view = view;
  }

  get isOn(): boolean {
    return this.#inputs !== null;
  }

  /** Starts it, or stops it where it turns. */
  toggle(): void {
    if (this.isOn) return this.stop();
    if (this.#view.isReduced) return this.#view.setOrbit(turned(this.#view.orbit, TURN_STEP, 0));
    this.#inputs = new AbortController();
    for (const kind of ['pointerdown', 'wheel', 'keydown'])
      this.#canvas.addEventListener(kind, () => this.stop(), { signal: this.#inputs.signal, passive: true });
    let before = performance.now();
    const step = (now: number): void => {
      const ms = Math.max(0, Math.min(LONGEST_MS, now - before));
      before = now;
      this.#request = requestAnimationFrame(step);
      this.#view.setOrbit(turned(this.#view.orbit, RATE * ms, 0));
    };
    this.#request = requestAnimationFrame(step);
  }

  stop(): void {
    cancelAnimationFrame(this.#request);
    this.#inputs?.abort();
    this.#inputs = null;
  }
}
