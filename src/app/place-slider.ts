import { html, type TemplateResult } from 'lit';
import { formatMm } from '../base/format-length.ts';
import type { SculptView } from '../model/bench-view.ts';
import type { Triple } from '../model/girth.ts';

/** Steps from one end of the part to the other. */
const STEPS = 400;

/**
 * A slider that moves a place along one axis of the file, from one end of the part to the other.
 * @param place  in the numbers of the file.
 * @param label  says where it is, given in mm.
 */
export function placeSlider(
  sculpt: SculptView,
  place: Triple,
  axis: 0 | 1 | 2,
  label: (mm: string) => string,
  moved: (place: Triple) => void,
): TemplateResult {
  const [from, size] = [sculpt.facts.boxMin[axis], sculpt.facts.boxSize[axis]];
  const at = place[axis];
  const mm = `${at < 0 ? '\u2212' : ''}${formatMm(Math.abs(at) * (sculpt.mmPerUnit ?? 1))}`;
  const take = (event: Event): void => {
    const to = (event.target as HTMLInputElement).valueAsNumber;
    const [x, y, z] = place.map((old, i) => (i === axis ? to : old));
    moved([x, y, z]);
  };
  return html`<label class="slide"
    >${label(mm)}
    <input
      data-means="place"
      type="range"
      min=${from}
      max=${from + size}
      step=${size > 0 ? size / STEPS : 'any'}
      .value=${String(at)}
      @input=${take}
    />
  </label>`;
}
