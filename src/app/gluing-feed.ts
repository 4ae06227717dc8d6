import { NOTHING } from './view-state.ts';
import { stepOfSeam } from './gluing-actions.ts';
import type { Workbench } from './workbench.ts';

/** Fetches what lies beside the work when a result is there, and the picture of the step that is chosen. */
export class GluingFeed {
  readonly #bench: Workbench;
  /** Number of the update whose work was asked for last. */
  #asked = 0;
  /** What the picture that was asked for last shows: the same step of another result is another picture. */
  #drawn = '';

  constructor(bench: Workbench) {
    this.#bench = bench;
  }

  /** Must follow every change of the workbench. */
  follow(): void {
    const { bench, isStale, view } = this.#bench;
    const { gluing, choice } = view;
    if (bench.pieces === null || bench.sheets === null) {
      this.#asked = 0;
      if (gluing.shop !== null) this.#bench.setView({ gluing: { ...gluing, shop: null, picture: null } });
      return;
    }
    if (isStale) return;
    if (bench.update !== this.#asked) {
      this.#asked = bench.update;
      void this.#fetch(bench.update);
      return;
    }
    if (choice.kind !== 'step' || gluing.shop === null) return;
    const wanted = `${this.#asked} ${choice.step}`;
    if (wanted === this.#drawn) return;
    this.#drawn = wanted;
    void this.#draw(wanted, choice.step);
  }

  async #fetch(update: number): Promise<void> {
    const shop = await this.#bench.workshop.shop();
    if (this.#asked !== update) return;
    this.#drawn = '';
    const { gluing, choice } = this.#bench.view;
    const step = gluing.moved === null ? null : stepOfSeam(shop, gluing.moved);
    const isGone = choice.kind === 'step' && choice.step > (shop?.gluing.steps.length ?? 0);
    this.#bench.setView({
      gluing: { shop, picture: null, refused: null, moved: null },
      ...(step !== null && choice.kind === 'step'
        ? { choice: { kind: 'step', step } }
        : isGone
          ? { choice: NOTHING }
          : {}),
    });
  }

  async #draw(wanted: string, step: number): Promise<void> {
    const drawn = await this.#bench.workshop.stepPicture(step);
    // Another step is looked at by now, or another result is there.
    if (this.#drawn !== wanted || drawn === null) return;
    const { gluing } = this.#bench.view;
    this.#bench.setView({ gluing: { ...gluing, picture: { step, drawn } } });
  }
}
