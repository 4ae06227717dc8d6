import type { GirthTape } from '../model/girth.ts';
import { setTape } from '../project/wear-commands.ts';
import type { BenchPlane } from '../viewport/bench-contract.ts';
import { benchPlaneOf, tapeAtPlane } from './tape-plane.ts';
import type { Workbench } from './workbench.ts';

/**
 * A tape taken in hand: its plane stands on the bench, and while it is dragged the tape is measured there, the last place first. Let go, it is
 * laid where it is by one command.
 */
export class TapeHand {
  readonly #bench: Workbench;
  #isDragging = false;
  #isMeasuring = false;
  /** Where the tape is to be measured next; places that were passed meanwhile are skipped. */
  #wanted: GirthTape | null = null;

  constructor(bench: Workbench) {
    this.#bench = bench;
  }

  /** @returns false when no tape is in hand. */
  move(plane: BenchPlane, isDone: boolean, isByKey: boolean): boolean {
    const { view, bench } = this.#bench;
    const tape = this.#tape;
    if (view.plane === null || tape === null || bench.sculpt?.mmPerUnit == null) return false;
    const moved = tapeAtPlane(tape, plane, bench.sculpt.mmPerUnit);
    this.#isDragging = !isDone;
    this.#bench.setView({ plane: { ...view.plane, plane } });
    this.#wanted = moved;
    void this.#measure();
    // Steps by key undo as one, as those of a slider do; each drag by itself.
    if (isDone) this.#bench.run(setTape(moved, isByKey ? `step ${tape.id}` : undefined));
    return true;
  }

  /** Must follow every change of the workbench: the plane goes where the document has the tape, and away with it. */
  follow(): void {
    const { view, bench, isStale } = this.#bench;
    const { plane, tried } = view;
    if (plane?.of !== 'tape') {
      this.#isDragging = false;
      this.#wanted = null;
      if (tried !== null) this.#bench.setView({ tried: null });
      return;
    }
    if (this.#isDragging) return;
    const tape = this.#tape;
    const mmPerUnit = bench.sculpt?.mmPerUnit ?? null;
    if (tape === null || mmPerUnit === null) return this.#bench.setView({ plane: null, tried: null });
    // What was tried is drawn until the document's own result is there.
    const isOver = tried !== null && !isStale && !this.#isMeasuring;
    const at = benchPlaneOf(tape, mmPerUnit);
    if (isOver || !isSame(at, plane.plane))
      this.#bench.setView({ plane: { ...plane, plane: at }, ...(isOver ? { tried: null } : {}) });
  }

  get #tape(): GirthTape | null {
    const { plane } = this.#bench.view;
    if (plane?.of !== 'tape') return null;
    return this.#bench.part?.tapes?.find(({ id }) => id === plane.id) ?? null;
  }

  async #measure(): Promise<void> {
    if (this.#isMeasuring) return;
    this.#isMeasuring = true;
    try {
      for (let tape = this.#wanted; tape !== null; tape = this.#wanted) {
        this.#wanted = null;
        const measures = await this.#bench.workshop.tapeAt(tape);
        if (measures !== null && this.#bench.view.plane?.id === tape.id)
          this.#bench.setView({ tried: { tape, ...measures } });
      }
    } finally {
      this.#isMeasuring = false;
      this.follow();
    }
  }
}

const isSame = (a: BenchPlane, b: BenchPlane): boolean =>
  [0, 1, 2].every((i) => a.point[i] === b.point[i] && a.normal[i] === b.normal[i]);
