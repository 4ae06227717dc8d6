import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { formatLength } from '../base/format-length.ts';
import type { Bridges, CutterWish } from '../model/cutter.ts';
import { CUTTER_LIMITS, setBridges, setCutter, setCutWidth, usualCutWidth } from '../project/cutter-commands.ts';
import { FIELDS_STYLE } from './fields-style.ts';
import { CUTTER_WORDS } from './files-words.ts';
import { JobSection } from './job-section.ts';
import './length-field.ts';
import type { LengthEvent } from './length-field.ts';
import './quantity-field.ts';
import type { NumberEvent } from './quantity-field.ts';
import { SHARED } from './styles.ts';

/** Bridges to begin with. */
const FIRST_BRIDGES: Bridges = { count: 4, widthMm: 2 };

/** What cuts the sheets, how wide it cuts, and what holds the pieces meanwhile. */
@customElement('fl-cutter-fields')
export class CutterFields extends JobSection {
  static override styles = [
    SHARED,
    FIELDS_STYLE,
    css`
      .choices label {
        font-size: var(--t-small);
      }
    `,
  ];

  protected override render() {
    if (this.project === null) return nothing;
    const { kind, cutWidthMm, bridges } = this.project.cutter ?? {};
    const usual = usualCutWidth(kind);
    const words = CUTTER_WORDS;
    return html`<div class="stack">
      <label
        >${words.kind}<br />
        <select data-means="cutter" @change=${this.#takeKind}>
          ${(['unknown', 'blade', 'laser'] as const).map(
            (name) =>
              html`<option value=${name} ?selected=${name === (kind ?? 'unknown')}>${words.kinds[name]}</option>`,
          )}
        </select>
      </label>
      <div class="row">
        <fl-length-field
          data-means="cut-width"
          label=${words.width}
          .mm=${cutWidthMm ?? usual}
          .unit=${this.unit}
          .min=${CUTTER_LIMITS.cutWidthMm.least}
          .max=${CUTTER_LIMITS.cutWidthMm.most}
          @fl-length=${(event: LengthEvent) => this.send(setCutWidth(event.mm))}
        ></fl-length-field>
        ${
          cutWidthMm === undefined || cutWidthMm === usual
            ? nothing
            : html`<button class="plain" @click=${() => this.send(setCutWidth(null))}>
                ${words.takeUsual}, ${formatLength(usual, this.unit)}
              </button>`
        }
      </div>
      <p class="small soft">${words.widthWhy}</p>
      <div class="choices">
        <label
          ><input
            data-means="bridges"
            type="checkbox"
            .checked=${bridges !== undefined}
            @change=${(event: Event) => this.send(setBridges((event.target as HTMLInputElement).checked ? FIRST_BRIDGES : null))}
          />${words.bridges}</label
        >
      </div>
      ${bridges === undefined ? nothing : this.#bridges(bridges)}
    </div>`;
  }

  #bridges(bridges: Bridges) {
    const { least, most } = CUTTER_LIMITS.bridges;
    return html`<div class="fields">
      <fl-number-field
        data-means="bridge-count"
        label=${CUTTER_WORDS.count}
        .value=${bridges.count}
        .least=${least}
        .most=${most}
        isWhole
        @fl-number=${(event: NumberEvent) => this.#takeBridges({ ...bridges, count: event.value ?? bridges.count })}
      ></fl-number-field>
      <fl-length-field
        data-means="bridge-width"
        label=${CUTTER_WORDS.bridgeMm}
        .mm=${bridges.widthMm}
        .unit=${this.unit}
        .min=${0.1}
        .max=${CUTTER_LIMITS.bridgeMm.most}
        @fl-length=${(event: LengthEvent) => this.#takeBridges({ ...bridges, widthMm: event.mm })}
      ></fl-length-field>
    </div>`;
  }

  #takeBridges(bridges: Bridges): void {
    this.send(setBridges(bridges));
  }

  #takeKind(event: Event): void {
    const { value } = event.target as HTMLSelectElement;
    this.send(setCutter(value === 'unknown' ? null : (value as NonNullable<CutterWish['kind']>)));
  }
}
