/** So near the edge of what is seen a drag pulls the rest along, px. */
const EDGE_PX = 56;
/** Fastest pull, px a picture. */
const MOST_PX = 14;

/** How far to scroll in one picture: less than 0 upward. @param y  place of the pointer; it and the edges are in px, y down. */
export function edgePull(y: number, top: number, bottom: number): number {
  const edge = Math.min(EDGE_PX, (bottom - top) / 4);
  const into = y < top + edge ? y - top - edge : y > bottom - edge ? y - bottom + edge : 0;
  return MOST_PX * Math.max(-1, Math.min(1, into / edge));
}

/** Scrolls what holds an element while something in it is dragged to the edge of what is seen. */
export class EdgeScroll {
  readonly #moved: () => void;
  #frame = 0;
  #y = 0;

  /** @param moved  told after each scroll: another thing lies under the pointer. */
  constructor(moved: () => void) {
    this.#moved = moved;
  }

  /** The pointer is at `y`, px of the window. */
  follow(element: Element, y: number): void {
    this.#y = y;
    if (this.#frame === 0) this.#frame = requestAnimationFrame(() => this.#pull(element));
  }

  end(): void {
    cancelAnimationFrame(this.#frame);
    this.#frame = 0;
  }

  #pull(element: Element): void {
    this.#frame = 0;
    const scroller = scrollerOf(element);
    const { top, bottom } =
      scroller === document.documentElement ? { top: 0, bottom: innerHeight } : scroller.getBoundingClientRect();
    const pull = edgePull(this.#y, top, bottom);
    const before = scroller.scrollTop;
    if (pull !== 0) scroller.scrollBy({ top: pull, behavior: 'instant' });
    if (scroller.scrollTop === before) return;
    this.#moved();
    this.follow(element, this.#y);
  }
}

/** The nearest thing around it that scrolls, through shadow roots; else the page. */
function scrollerOf(element: Element): Element {
  for (let at: Node | null = element; at !== null; at = at instanceof ShadowRoot ? at.host : at.parentNode) {
    if (!(at instanceof HTMLElement) || at.scrollHeight <= at.clientHeight + 1) continue;
    if (/auto|scroll/.test(getComputedStyle(at).overflowY)) return at;
  }
  return document.scrollingElement ?? document.documentElement;
}
