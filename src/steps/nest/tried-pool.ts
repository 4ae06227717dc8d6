import type { Layout } from './layout.ts';

/** Layouts kept at most. */
const MOST_KEPT = 30;
/** How strongly a draw leans to those that overlap least: 1 not at all. */
const LEANING = 3;

/** Layouts of one length in which something still overlaps, those that overlap least first. */
export class TriedPool {
  readonly #kept: { readonly layout: Layout; readonly depth: number }[] = [];

  clear(): void {
    this.#kept.length = 0;
  }

  /** Keeps a copy of a layout, unless too many overlap less. */
  add(layout: Layout, depth: number): void {
    const kept = this.#kept;
    let at = kept.length;
    while (at > 0 && kept[at - 1].depth > depth) at -= 1;
    if (at >= MOST_KEPT) return;
    kept.splice(at, 0, { layout: layout.copy(), depth });
    if (kept.length > MOST_KEPT) kept.pop();
  }

  /** One of the kept, a better one more often. */
  draw(rand: () => number): Layout {
    return this.#kept[Math.floor(this.#kept.length * rand() ** LEANING)].layout;
  }
}
