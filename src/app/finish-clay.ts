import { html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { clayOf } from '../project/clay-limits.ts';
import { setClay } from '../project/finish-commands.ts';
import type { FinishView } from '../worker/finish-api.ts';
import { FIELDS_STYLE } from './fields-style.ts';
import { JobSection } from './job-section.ts';
import './length-field.ts';
import type { LengthEvent } from './length-field.ts';
import { PAINT_WORDS } from './paint-words.ts';
import './quantity-field.ts';
import type { NumberEvent } from './quantity-field.ts';
import { QUANTITY_WORDS } from './quantity-words.ts';
import { SHARED } from './styles.ts';
import { means } from './help/means.ts';

/** The clay with the figures of its label, and what is modelled in it. */
@customElement('fl-finish-clay')
export class FinishClay extends JobSection {
  static override styles = [SHARED, FIELDS_STYLE];

  @property({ attribute: false }) finish: FinishView | null = null;

  protected override render() {
    if (this.project === null) return nothing;
    const words = PAINT_WORDS.clay;
    const { units } = PAINT_WORDS;
    const clay = clayOf(this.project);
    const sum = this.finish?.plan.clay ?? null;
    return html`<details ?open=${sum !== null}>
      <summary>${words.heading}</summary>
      <div class="stack">
        <p class="small soft">${words.how}</p>
        ${
          sum === null
            ? nothing
            : html`<ul class="small stack">
                  ${this.finish?.clay.map((text) => html`<li>${text}.</li>`)}
                </ul>
                <p class="small">${words.sum(QUANTITY_WORDS.volume(sum.wetMl), sum.days)}</p>`
        }
        <div class="fields">
          <fl-length-field
            data-means="clay-layer"
            label=${words.layer}
            .mm=${clay.layerMm}
            .unit=${this.unit}
            .min=${0.5}
            .max=${100}
            @fl-length=${({ mm }: LengthEvent) => this.send(setClay({ ...clay, layerMm: mm }))}
          ></fl-length-field>
          ${means(
            'clay-dry',
            this.#number(words.dry, units.h, clay.dryH, 10_000, (dryH) => setClay({ ...clay, dryH })),
          )}
          ${means(
            'clay-shrink',
            this.#number(words.shrink, units.pct, clay.shrinkPct, 40, (shrinkPct) => setClay({ ...clay, shrinkPct })),
          )}
        </div>
      </div>
    </details>`;
  }

  #number(
    label: string,
    unit: string,
    value: number,
    most: number,
    put: (value: number) => ReturnType<typeof setClay>,
  ) {
    return html`<fl-number-field
      label=${label}
      unit=${unit}
      .value=${value}
      .most=${most}
      @fl-number=${(event: NumberEvent) => event.value !== null && this.send(put(event.value))}
    ></fl-number-field>`;
  }
}
