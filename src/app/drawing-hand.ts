import { layWish } from './drawing-actions.ts';
import { findingText } from './finding-text.ts';
import type { DrawingInHand, DrawingPlace } from './view-state.ts';
import type { Workbench } from './workbench.ts';

/** A drawing in hand is shown on the sculpt as it would part it: the worker lays it, the latest wish first. */
export class DrawingHand {
  readonly #bench: Workbench;
  /** The place in the middle of the picture, or null where the sculpt is not there. */
  readonly #middle: () => DrawingPlace | null;
  #shown: { drawing: DrawingInHand; isMirrored: boolean; sculpt: unknown } | null = null;
  #isWanted = false;
  #isLaying = false;

  constructor(bench: Workbench, middle: () => DrawingPlace | null) {
    this.#bench = bench;
    this.#middle = middle;
  }

  /** Must follow every change of the workbench. */
  follow(): void {
    const { view, bench } = this.#bench;
    const { drawing, isMirrored } = view;
    const before = this.#shown;
    if (drawing === null || view.tool !== 'drawing') {
      this.#shown = null;
      if (drawing !== null) this.#bench.setView({ drawing: null, laid: null, previewLines: null });
      return;
    }
    const { sculpt } = bench;
    if (before?.drawing === drawing && before.isMirrored === isMirrored && before.sculpt === sculpt) return;
    this.#shown = { drawing, isMirrored, sculpt };
    const isOther = before === null || before.drawing.strokes !== drawing.strokes || before.sculpt !== sculpt;
    if (isOther) return void this.#placeInMiddle(drawing);
    this.#isWanted = true;
    void this.#lay();
  }

  /** Once the picture shows the sculpt whole. Places are told in the triangles on show, so with another sculpt it is placed anew. */
  async #placeInMiddle(drawing: DrawingInHand): Promise<void> {
    await new Promise(requestAnimationFrame);
    const { view } = this.#bench;
    if (view.drawing === drawing) this.#bench.setView({ drawing: { ...drawing, place: this.#middle() }, laid: null });
  }

  async #lay(): Promise<void> {
    if (this.#isLaying) return;
    this.#isLaying = true;
    try {
      while (this.#isWanted) {
        this.#isWanted = false;
        const { drawing, isMirrored } = this.#bench.view;
        const wish = drawing && layWish(this.#bench, drawing);
        const laid = wish === null ? null : await this.#bench.workshop.layDrawing(wish, isMirrored);
        if (this.#bench.view.drawing !== drawing || drawing === null) continue;
        if (laid === null) this.#bench.setView({ laid: null, previewLines: null });
        else if (laid.ok)
          this.#bench.setView({ laid: laid.value, previewLines: laid.value.lines.map(({ xyz }) => xyz) });
        else this.#bench.setView({ laid: { problem: findingText(laid.problem, this.#bench.project?.lengthUnit ?? 'mm') }, previewLines: null });
      }
    } finally {
      this.#isLaying = false;
    }
  }
}
