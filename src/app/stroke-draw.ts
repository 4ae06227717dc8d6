import type { SculptView } from '../model/bench-view.ts';
import type { BenchPick } from '../viewport/bench-contract.ts';
import { edgeIndexOf } from './edge-index.ts';
import { LiveLine } from './live-line.ts';
import { partEdges } from './seam-actions.ts';
import type { Workbench } from './workbench.ts';

interface Stroke {
  readonly sculpt: SculptView;
  readonly line: LiveLine;
}

/** Draws a seam by dragging over the sculpt with the knife: the line follows the pointer along edges and is parted when it is let go, as one. */
export class StrokeDraw {
  readonly #bench: Workbench;
  #stroke: Stroke | null = null;
  /** Corner the line is wanted to, and the one it was last led to. */
  #wanted = -1;
  #reached = -1;
  #isFollowing = false;
  /** False for a press that has not moved yet: it may be a click. */
  #isDrawn = false;
  #isDropped = false;

  constructor(bench: Workbench) {
    this.#bench = bench;
  }

  /** @returns true when the press may become a stroke. */
  grab({ onSculpt, vertex }: BenchPick): boolean {
    const { sculpt } = this.#bench.bench;
    this.#stroke = null;
    if (this.#bench.view.tool !== 'part' || onSculpt !== true || vertex === undefined || sculpt === null) return false;
    this.#stroke = { sculpt, line: new LiveLine(vertex) };
    [this.#wanted, this.#reached] = [vertex, vertex];
    [this.#isDrawn, this.#isDropped] = [false, false];
    return true;
  }

  drag({ onSculpt, vertex }: BenchPick): void {
    if (this.#stroke === null || onSculpt !== true || vertex === undefined) return;
    this.#wanted = vertex;
    this.#isDrawn = true;
    if (!this.#isFollowing) void this.#follow();
  }

  /** Parts along the line once it has come to where the pointer was let go. @returns false when nothing was being drawn. */
  drop(): boolean {
    if (this.#stroke === null) return false;
    this.#isDropped = true;
    if (!this.#isFollowing) this.#part();
    return true;
  }

  /** Lets go of the line without parting. @returns false when there was none. */
  cancel(): boolean {
    if (this.#stroke === null || !this.#isDrawn) return false;
    this.#stroke = null;
    this.#isDrawn = false;
    this.#bench.setView({ preview: null });
    return true;
  }

  async #follow(): Promise<void> {
    this.#isFollowing = true;
    try {
      while (this.#stroke !== null && this.#reached !== this.#wanted) {
        const stroke = this.#stroke;
        this.#reached = this.#wanted;
        stroke.line.pointAt(this.#wanted);
        const { anchor, trail } = stroke.line;
        const way = await this.#bench.workshop.handLine([anchor, this.#wanted], null, trail);
        if (this.#stroke !== stroke) continue;
        if (this.#bench.bench.sculpt !== stroke.sculpt) return void this.cancel();
        if (!way.ok) continue;
        stroke.line.take(way.value);
        this.#bench.setView({ preview: edgeIndexOf(stroke.sculpt).along(stroke.line.corners) });
      }
    } finally {
      this.#isFollowing = false;
      if (this.#isDropped) this.#part();
    }
  }

  #part(): void {
    const stroke = this.#stroke;
    this.#stroke = null;
    [this.#isDrawn, this.#isDropped] = [false, false];
    if (stroke === null) return;
    const edges = edgeIndexOf(stroke.sculpt).along(stroke.line.corners);
    this.#bench.setView({ preview: null });
    if (edges.length > 0) partEdges(this.#bench, edges);
  }
}
