import { runWithPauses } from '../base/stepwise.ts';
import type { BendField } from '../model/bend-field.ts';
import { bendFieldSteps } from '../pipeline/bend-field.ts';
import type { LayerOutcome, Outcome } from '../pipeline/outcome.ts';
import { PoliteWork } from './polite-work.ts';

/** Answers how sheets of the last outcome bend. Made when it is asked for, and not again for the same sheet. */
export class BendDesk {
  readonly #outcome: () => Outcome | null;
  readonly #known = new WeakMap<LayerOutcome, BendField | null>();

  constructor(outcome: () => Outcome | null) {
    this.#outcome = outcome;
  }

  /** @param sheet  of the wall, 1 the outermost; where there is no such sheet it is the outermost. */
  async bendField(sheet: number): Promise<BendField | null> {
    const { layers = [] } = this.#outcome() ?? {};
    const layer = layers.at(sheet - 1)?.cut == null ? layers.at(0) : layers[sheet - 1];
    if (layer === undefined) return null;
    const known = this.#known.get(layer);
    if (known !== undefined) return known;
    const work = new PoliteWork(() => undefined);
    const made = await runWithPauses(bendFieldSteps(layer), () => work.pause(0));
    this.#known.set(layer, made);
    return made;
  }
}
