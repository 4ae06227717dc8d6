import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { formatNumber } from '../base/format-length.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import type { NeutralReading, NeutralTest } from '../model/neutral-test.ts';
import { setNeutralTest, useNeutral } from '../project/commands.ts';
import { fitNeutral } from '../project/neutral-fit.ts';
import type { LayerChoice } from '../project/project.ts';
import { FIELDS_STYLE } from './fields-style.ts';
import { findingText } from './finding-text.ts';
import { JobSection } from './job-section.ts';
import './length-field.ts';
import type { LengthEvent } from './length-field.ts';
import { SHARED } from './styles.ts';
import { WORDS } from './words.ts';
import { means } from './help/means.ts';

/** Length of the printed strip on most papers, mm. */
const USUAL_STRIP_MM = 240;

/** A row that is being typed: either figure may still be missing. */
type Row = Partial<NeutralReading>;

/** Takes what was measured on the bent test strip and tells the foam's neutral fraction with how sure it is. */
@customElement('fl-neutral-form')
export class NeutralForm extends JobSection {
  static override styles = [
    SHARED,
    FIELDS_STYLE,
    css`
      .fields {
        align-items: end;
      }
      .k {
        font-variant-numeric: tabular-nums;
      }
    `,
  ];

  /** The sheet of the wall whose foam it is about. */
  @property({ attribute: false }) layer: LayerChoice | null = null;
  /** The row under those that are whole. */
  @state() private begun: Row = {};

  protected override render() {
    const { layer } = this;
    const foam = this.project?.foams.find((sheet) => sheet.id === layer?.foam);
    if (layer === null || foam === undefined) return nothing;
    const words = WORDS.neutral;
    const test = foam.neutralTest ?? { lengthMm: USUAL_STRIP_MM, thicknessMm: layer.thicknessMm, readings: [] };
    return html`<fieldset class="stack">
      <legend>${words.heading}</legend>
      <p class="small soft">${words.how}</p>
      <div><button @click=${() => this.ask('save-strip')}>${words.print}</button></div>
      <div class="fields">
        ${means(
          'neutral-length',
          this.#field(words.length, test.lengthMm, (lengthMm) => this.#keep(foam, { ...test, lengthMm })),
        )}
        ${means(
          'neutral-thickness',
          this.#field(words.thickness, test.thicknessMm, (thicknessMm) => this.#keep(foam, { ...test, thicknessMm })),
        )}
      </div>
      ${test.readings.map((reading, i) => this.#reading(foam, test, reading, i))} ${this.#rowBegun(foam, test)}
      ${test.readings.length === 0 ? nothing : this.#answer(foam, test, layer.neutralFraction)}
    </fieldset>`;
  }

  #reading(foam: FoamSheet, test: NeutralTest, reading: NeutralReading, i: number) {
    const words = WORDS.neutral;
    const put = (change: Partial<NeutralReading>): void =>
      this.#keep(foam, { ...test, readings: test.readings.with(i, { ...reading, ...change }) });
    return html`<div class="fields" role="group" aria-label=${words.bend(i + 1)}>
      ${means(
        'neutral-across',
        this.#field(words.across, reading.mandrelMm, (mandrelMm) => put({ mandrelMm })),
      )}
      ${means(
        'neutral-arc',
        this.#field(words.arc, reading.arcMm, (arcMm) => put({ arcMm })),
      )}
      <button
        aria-label=${words.removeBend(i + 1)}
        @click=${() => this.#keep(foam, { ...test, readings: test.readings.filter((_, at) => at !== i) })}
      >
        ${words.remove}
      </button>
    </div>`;
  }

  /** A bend is kept once both of its figures are there. */
  #rowBegun(foam: FoamSheet, test: NeutralTest) {
    const words = WORDS.neutral;
    const put = (change: Row): void => {
      const { mandrelMm, arcMm } = { ...this.begun, ...change };
      if (mandrelMm === undefined || arcMm === undefined) {
        this.begun = { ...this.begun, ...change };
        return;
      }
      this.begun = {};
      this.#keep(foam, { ...test, readings: [...test.readings, { mandrelMm, arcMm }] });
    };
    return html`<div class="fields" role="group" aria-label=${words.bend(test.readings.length + 1)}>
      ${means(
        'neutral-across',
        this.#field(words.across, this.begun.mandrelMm ?? null, (mandrelMm) => put({ mandrelMm })),
      )}
      ${means(
        'neutral-arc',
        this.#field(words.arc, this.begun.arcMm ?? null, (arcMm) => put({ arcMm })),
      )}
    </div>`;
  }

  #answer(foam: FoamSheet, test: NeutralTest, now: number) {
    const words = WORDS.neutral;
    const fit = fitNeutral(test);
    if (!fit.ok) return html`<p class="small wrong" role="status">${findingText(fit.problem, this.unit)}</p>`;
    const { k, plusMinus, apart } = fit.value;
    const rounded = Number(k.toFixed(3));
    return html`<p class="k" role="status">
        ${words.answer(formatNumber(k, 3), formatNumber(plusMinus, 3))}
        ${apart.length === 0 ? nothing : html`<br /><span class="small wrong">${words.apart(apart)}</span>`}
      </p>
      <div>
        <button ?disabled=${now === rounded} @click=${() => this.send(useNeutral(foam.id, rounded))}>
          ${now === rounded ? words.used : words.use(formatNumber(k, 3))}
        </button>
      </div>`;
  }

  #field(label: string, mm: number | null, take: (mm: number) => void) {
    return html`<fl-length-field
      label=${label}
      .mm=${mm}
      .unit=${this.unit}
      min="0.5"
      max="2000"
      @fl-length=${(event: LengthEvent) => take(event.mm)}
    ></fl-length-field>`;
  }

  #keep(foam: FoamSheet, test: NeutralTest): void {
    this.send(setNeutralTest(foam.id, test));
  }
}
