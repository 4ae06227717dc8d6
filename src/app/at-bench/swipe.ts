/** A finger in a glove is broad and unsteady: so far it must go across, px, and so many times farther than up or down. */
const ACROSS_PX = 80;
const ACROSS_TIMES = 2;

/** Tells a swipe to one side from a scroll and from a tap. */
export class Swipe {
  #from: { readonly id: number; readonly x: number; readonly y: number } | null = null;

  begin({ pointerId, pointerType, isPrimary, clientX, clientY }: PointerEvent): void {
    this.#from = pointerType === 'mouse' || !isPrimary ? null : { id: pointerId, x: clientX, y: clientY };
  }

  /** @returns 1 for a swipe to the left, -1 to the right, 0 for none. */
  end({ pointerId, clientX, clientY }: PointerEvent): -1 | 0 | 1 {
    const from = this.#from;
    this.#from = null;
    if (from?.id !== pointerId) return 0;
    const [across, along] = [clientX - from.x, clientY - from.y];
    if (Math.abs(across) < ACROSS_PX || Math.abs(across) < ACROSS_TIMES * Math.abs(along)) return 0;
    return across < 0 ? 1 : -1;
  }

  cancel(): void {
    this.#from = null;
  }
}
