import { css, html, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatLength, formatThickness } from '../base/format-length.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import { setFoam, setModelIs, setNeutral, setThickness, setTracedSide } from '../project/commands.ts';
import type { LayerChoice } from '../project/project.ts';
import { countByArrows, figureShown, figureTyped } from './figure-input.ts';
import './findings.ts';
import { hasWrong } from './findings.ts';
import './job-line.ts';
import { JobSection } from './job-section.ts';
import './length-field.ts';
import type { LengthEvent } from './length-field.ts';
import './neutral-form.ts';
import './rule-fields.ts';
import { RULE_WORDS } from './rule-words.ts';
import './sheet-choice.ts';
import { layerOnBench, sheetOnBench } from './sheet-on-bench.ts';
import './shrink-fields.ts';
import { SHARED } from './styles.ts';
import { WORDS } from './words.ts';

/** Which foam, how thick it really is, and which of its surfaces the sculpt is. */
@customElement('fl-foam-line')
export class FoamLine extends JobSection {
  static override styles = [
    SHARED,
    css`
      .stock {
        display: flex;
        flex-wrap: wrap;
        gap: var(--s2) var(--s3);
      }
      /* Its radio lies inside it: elsewhere a click would scroll the window to where that lies. */
      .stock label {
        position: relative;
        display: grid;
        grid-template-rows: 58px auto;
        justify-items: start;
        align-items: end;
        gap: var(--s1);
        min-inline-size: 62px;
        cursor: pointer;
        font-size: var(--t-body);
      }
      .stock input {
        position: absolute;
        opacity: 0;
      }
      /* A sheet's cut face, as thick beside the others as it is in the hand. */
      .stock svg {
        inline-size: 62px;
        block-size: 58px;
      }
      .stock .cut {
        fill: var(--foam);
      }
      .stock .under {
        stroke: transparent;
        stroke-width: 4;
      }
      .stock input:checked + svg .under {
        stroke: var(--lamp);
      }
      .stock input:focus-visible + svg {
        outline: 3px solid var(--lamp-ink);
        outline-offset: 2px;
      }
      .stock input:checked ~ span {
        font-weight: 700;
      }
      .fields {
        align-items: end;
      }
      fieldset > legend {
        font-size: var(--t-small);
        color: var(--ink-soft);
        padding: 0;
      }
      .layer {
        inline-size: 44px;
        block-size: 20px;
      }
      .layer rect {
        fill: var(--foam);
      }
      .layer path {
        stroke: var(--lamp);
        stroke-width: 3;
      }
    `,
  ];

  /** Which sheet of the wall is worked on, 1 the outermost. */
  @property({ type: Number }) sheet = 1;

  protected override render() {
    const part = this.sculptPart;
    const layer = this.#layer;
    if (part === null || layer === undefined) {
      return html`<fl-job-line heading=${WORDS.lines.foam} mark="wait"
        ><p slot="answer" class="soft">${WORDS.waiting}</p></fl-job-line
      >`;
    }
    const foam = this.project?.foams.find((sheet) => sheet.id === layer.foam);
    return html`<fl-job-line heading=${WORDS.lines.foam} mark=${hasWrong(this.bench, ['shell']) ? 'wrong' : 'so'}>
      <p slot="answer">${this.#answer(part.layers)}</p>
      <fl-sheet-choice
        .project=${this.project}
        .bench=${this.bench}
        .sheet=${sheetOnBench(part.layers, this.sheet)}
      ></fl-sheet-choice>
      <fieldset>
        <legend>${WORDS.foam.stock}</legend>
        <div class="stock">${this.#thicknesses().map((sheet) => this.#sheet(sheet, foam))}</div>
      </fieldset>
      <div class="row fields">
        ${foam === undefined ? nothing : this.#sheetSizes(foam)}
        <fl-length-field
          data-means="thickness"
          label=${WORDS.foam.measured}
          .mm=${layer.thicknessMm}
          .unit=${this.unit}
          min="0.5"
          max="60"
          @fl-length=${(event: LengthEvent) => this.send(setThickness(event.mm, layer.id))}
        ></fl-length-field>
      </div>
      <fieldset>
        <legend>${WORDS.foam.modelIs}</legend>
        <div class="choices">
          ${(['face', 'middle', 'back'] as const).map((side) => this.#surface(side, part.modelIs))}
        </div>
      </fieldset>
      <details>
        <summary>${WORDS.foam.finer}</summary>
        <div class="stack">
          <label>
            ${WORDS.foam.neutral}
            <br /><input
              data-means="neutral"
              type="text"
              inputmode="decimal"
              autocomplete="off"
              .value=${figureShown(layer.neutralFraction)}
              @keydown=${countByArrows(0, 1, 0.01)}
              @change=${this.#takeNeutral}
            />
          </label>
          <p class="small soft">${WORDS.foam.neutralWhy}</p>
          <fieldset>
            <legend>${WORDS.foam.traced}</legend>
            <div class="choices">
              ${(['face', 'back'] as const).map(
                (side) =>
                  html`<label>
                    <input
                      data-means="traced"
                      type="radio"
                      name="traced"
                      .checked=${part.tracedSide === side}
                      @change=${() => this.send(setTracedSide(side))}
                    />
                    ${WORDS.foam.sides[side]}
                  </label>`,
              )}
            </div>
          </fieldset>
          <fl-neutral-form .project=${this.project} .bench=${this.bench} .layer=${layer}></fl-neutral-form>
          <fl-shrink-fields .project=${this.project} .bench=${this.bench} .layer=${layer}></fl-shrink-fields>
        </div>
      </details>
      <details>
        <summary>${RULE_WORDS.summary}</summary>
        <fl-rule-fields .project=${this.project} .bench=${this.bench}></fl-rule-fields>
      </details>
      <fl-findings .bench=${this.bench} .project=${this.project} .steps=${['shell']}></fl-findings>
    </fl-job-line>`;
  }

  /** The sheet of the wall that is worked on. */
  get #layer(): LayerChoice | undefined {
    return layerOnBench(this.sculptPart?.layers ?? [], this.sheet);
  }

  #answer(layers: readonly LayerChoice[]): string {
    const thick = [...layers].reverse().map(({ thicknessMm }) => formatThickness(thicknessMm, this.unit));
    return thick.length === 1 ? WORDS.foam.answer(thick[0]) : WORDS.foam.answerOfWall(thick);
  }

  /** One sheet for each thickness; the size is chosen after. */
  #thicknesses(): FoamSheet[] {
    const foams = this.project?.foams ?? [];
    return foams.filter((sheet, i) => foams.findIndex((other) => other.thicknessMm === sheet.thicknessMm) === i);
  }

  #sheet(sheet: FoamSheet, foam: FoamSheet | undefined) {
    const height = 3.2 * sheet.thicknessMm;
    return html`<label>
      <input
        data-means="foam"
        type="radio"
        name="foam"
        .checked=${sheet.thicknessMm === foam?.thicknessMm}
        @change=${() => this.send(setFoam(sheet.id, sheet.thicknessMm, this.#layer?.id))}
      />
      <svg viewBox="0 0 62 58" aria-hidden="true">
        ${svg`<rect class="cut" x="0" y=${50 - height} width="62" height=${height} /><path class="under" d="M0 55h62" />`}
      </svg>
      <span>${formatThickness(sheet.thicknessMm, this.unit)}</span>
    </label>`;
  }

  #sheetSizes(foam: FoamSheet) {
    const sizes = this.project?.foams.filter((sheet) => sheet.thicknessMm === foam.thicknessMm) ?? [];
    return html`<label>
      <span class="soft">${WORDS.foam.sheet}</span><br />
      <select data-means="sheet-size" @change=${this.#takeSize}>
        ${sizes.map(
          (sheet) =>
            html`<option value=${sheet.id} ?selected=${sheet.id === foam.id}>
              ${WORDS.foam.size(formatLength(sheet.sheetWidthMm, this.unit), formatLength(sheet.sheetHeightMm, this.unit))}
            </option>`,
        )}
      </select>
    </label>`;
  }

  #surface(side: 'face' | 'middle' | 'back', chosen: string) {
    const y = { face: 4, middle: 10, back: 16 }[side];
    return html`<label>
      <input
        data-means="surface"
        type="radio"
        name="surface"
        .checked=${side === chosen}
        @change=${() => this.send(setModelIs(side))}
      />
      <svg class="layer" viewBox="0 0 44 20" aria-hidden="true">
        ${svg`<rect x="2" y="4" width="40" height="12" /><path d="M0 ${y}h44" />`}
      </svg>
      ${WORDS.foam.surfaces[side]}
    </label>`;
  }

  #takeSize(event: Event): void {
    const id = (event.target as HTMLSelectElement).value;
    const sheet = this.project?.foams.find((foam) => foam.id === id);
    const layer = this.#layer;
    if (sheet !== undefined) this.send(setFoam(sheet.id, layer?.thicknessMm ?? sheet.thicknessMm, layer?.id));
  }

  #takeNeutral(event: Event): void {
    const k = figureTyped(event);
    if (k >= 0 && k <= 1) this.send(setNeutral(k, this.#layer?.id));
  }
}
