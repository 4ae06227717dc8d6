import { LitElement, html } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatFine, type LengthUnit } from '../base/format-length.ts';
import { FIT_LIMIT_MM } from '../viewport/bench-contract.ts';
import './field-scale.ts';
import { LOOK_WORDS as WORDS } from './look-words.ts';
import { SHARED } from './styles.ts';
import type { FitReading } from './view-state.ts';

/** The scale of gap and overlap along seams, with the figures of the seam under the pointer. */
@customElement('fl-fit-legend')
export class FitLegend extends LitElement {
  static override styles = [SHARED];

  @property({ attribute: false }) reading: FitReading | null = null;
  @property() unit: LengthUnit = 'mm';

  protected override render() {
    const { reading } = this;
    return html`<fl-field-scale
        label=${WORDS.fitLegend(formatFine(FIT_LIMIT_MM, this.unit))}
        .limit=${FIT_LIMIT_MM}
        .notice=${FIT_LIMIT_MM / 2}
        .needles=${reading === null ? [] : [reading.faceGapMm, reading.backGapMm]}
      ></fl-field-scale>
      <p class="small" aria-live="polite">
        ${
          reading === null
            ? WORDS.fitHint
            : WORDS.fitReading(reading.letter, this.#gap(reading.faceGapMm), this.#gap(reading.backGapMm))
        }
      </p>`;
  }

  #gap(mm: number): string {
    return WORDS.gapOf(formatFine(Math.abs(mm), this.unit), mm < 0);
  }
}
