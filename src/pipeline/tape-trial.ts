import type { GirthTape, TapeMeasures } from '../model/girth.ts';
import { AllLayers } from './all-layers.ts';
import type { Outcome } from './outcome.ts';
import { measuresAt } from './wear.ts';

/** Measures tapes on the wall of the last outcome while the maker still drags them: nothing else follows from it. */
export class TapeTrial {
  readonly #all = new AllLayers();

  /** @returns null before the wall stands. */
  of({ sculpt, layers }: Outcome, tape: GirthTape): TapeMeasures | null {
    const shells = layers.flatMap(({ cut }) => (cut === null ? [] : [cut.shell]));
    const mesh = layers.at(0)?.cut?.mesh;
    if (sculpt?.mmPerUnit == null || mesh === undefined || shells.length < layers.length) return null;
    return measuresAt(mesh, this.#all.wall(shells), tape, sculpt.mmPerUnit);
  }
}
