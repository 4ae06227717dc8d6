import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { MM_PER_INCH, formatInches, formatLength, formatMm, formatNumber } from '../base/format-length.ts';
import type { ModelUnit, Repair, ScaleChoice } from '../model/source-model.ts';
import { removeRepair, setScale, setUpAxis } from '../project/commands.ts';
import './elevation.ts';
import { elevationSize } from './elevation-drawing.ts';
import { ViewEvent } from './events.ts';
import './findings.ts';
import './job-line.ts';
import type { LineMark } from './job-line.ts';
import { JobSection } from './job-section.ts';
import './length-field.ts';
import type { LengthEvent } from './length-field.ts';
import './simplify-fields.ts';
import { SHARED } from './styles.ts';
import type { Tool } from './view-state.ts';
import { WORDS } from './words.ts';

const MM_PER: Readonly<Record<ModelUnit, number>> = { mm: 1, cm: 10, m: 1000, in: MM_PER_INCH };
/** Longest sides a thing that is worn or carried has, mm: used only to say which unit is likely (shop judgement). */
const LIKELY_MM = { least: 60, most: 2500 };

/** First line of the job: how large the sculpt is, asked once when the file does not say. */
@customElement('fl-size-line')
export class SizeLine extends JobSection {
  static override styles = [
    SHARED,
    css`
      .units {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(5.6rem, 1fr));
        gap: var(--s2);
      }
      .units button {
        display: flex;
        flex-direction: column;
        align-items: flex-start;
        gap: 2px;
        padding-block: var(--s2);
        font-weight: 500;
        text-align: start;
      }
      .units b {
        font-size: var(--t-body);
      }
      fieldset > legend {
        font-size: var(--t-small);
        color: var(--ink-soft);
        padding: 0;
      }
      .known {
        align-items: end;
      }
    `,
  ];

  @property() theme = '';
  @property() tool: Tool = 'choose';
  /** Corners picked for a measured length, in the numbering of the sculpt. */
  @property({ attribute: false }) measured: readonly [number, number] | null = null;
  @state() private isChanging = false;
  @state() private axis: 'longest' | 'x' | 'y' | 'z' = 'longest';

  /** While the unit is asked for, the keyboard goes to the likely one. */
  override focus(options?: FocusOptions): void {
    const likely =
      this.bench.sculpt?.sized === false ? this.renderRoot.querySelector<HTMLElement>('.units .next') : null;
    if (likely === null) super.focus(options);
    else likely.focus(options);
  }

  /** What is asked of the size is opened for whoever is led to it. */
  override focusOn(selector: string): void {
    this.isChanging ||= selector.startsWith('.known');
    void this.updateComplete.then(() => super.focusOn(selector));
  }

  protected override render() {
    const { sculpt } = this.bench;
    const part = this.sculptPart;
    return html`<fl-job-line asks heading=${WORDS.lines.size} mark=${this.#mark()}>
      ${this.#answer()}
      ${
        sculpt === null || part === null
          ? nothing
          : html`${
              sculpt.sized
                ? html`<fl-elevation
                      .sculpt=${sculpt}
                      .up=${part.upAxis}
                      .unit=${this.unit}
                      .theme=${this.theme}
                    ></fl-elevation>
                    <div class="row">
                      <span class="small soft">${this.#howKnown(part.scale)}</span>
                      <button class="plain" aria-expanded=${this.isChanging} @click=${this.#turnChanging}>
                        ${this.isChanging ? WORDS.size.keep : WORDS.size.change}
                      </button>
                    </div>`
                : nothing
            }
            ${!sculpt.sized || this.isChanging ? this.#question() : nothing} ${this.#repairs(part.repairs)}
            ${
              sculpt.sized
                ? html`<fl-simplify-fields .project=${this.project} .bench=${this.bench}></fl-simplify-fields>`
                : nothing
            }`
      }
      <fl-findings
        .bench=${this.bench}
        .project=${this.project}
        .steps=${['read', 'size', 'simplify', 'project']}
      ></fl-findings>
    </fl-job-line>`;
  }

  #mark(): LineMark {
    const { sculpt, stopped } = this.bench;
    if (stopped?.step === 'read') return 'wrong';
    if (sculpt === null) return 'wait';
    return sculpt.sized ? 'so' : 'missing';
  }

  #answer() {
    const { sculpt } = this.bench;
    const part = this.sculptPart;
    if (sculpt === null || part === null) return html`<p slot="answer" class="soft">${WORDS.size.unread}</p>`;
    if (!sculpt.sized) return html`<p slot="answer">${WORDS.size.unknown}</p>`;
    const { widthMm, heightMm, depthMm } = elevationSize(sculpt, part.upAxis);
    const other = this.unit === 'mm' ? formatInches(heightMm) : formatMm(heightMm);
    return html`<p slot="answer">
        ${WORDS.size.tall(formatLength(heightMm, this.unit))} <span class="soft">${other}</span>
      </p>
      <p>${WORDS.size.across(formatLength(widthMm, this.unit), formatLength(depthMm, this.unit))}</p>`;
  }

  /** Repairs that were made, each with the way back. */
  #repairs(repairs: readonly Repair[]) {
    if (repairs.length === 0) return nothing;
    return html`<ul class="small">
      ${repairs.map(
        ({ kind }, index) =>
          html`<li>
            ${WORDS.repairs.done} ${WORDS.repairs[kind]}
            <button class="plain" @click=${() => this.send(removeRepair(index))}>${WORDS.repairs.takeBack}</button>
          </li>`,
      )}
    </ul>`;
  }

  #howKnown(scale: ScaleChoice | null): string {
    if (scale === null) return '';
    if (scale.by === 'unit') return WORDS.size.readAs[scale.unit];
    if (scale.by === 'body') return WORDS.size.byBody(scale.measure.replaceAll('-', ' '));
    return scale.by === 'points' ? WORDS.size.measured : WORDS.size.fromAxis(scale.axis);
  }

  #question() {
    const longest = Math.max(...(this.bench.sculpt?.facts.boxSize ?? [0]));
    const likely = this.#likelyUnit(longest);
    return html`<div class="stack">
      <p class="small">${WORDS.size.ask(formatNumber(longest, longest < 10 ? 2 : 1))}</p>
      <div class="units" role="group" aria-label=${WORDS.size.unit}>
        ${(['mm', 'cm', 'in', 'm'] as const).map(
          (unit) =>
            html`<button class=${unit === likely ? 'next' : ''} @click=${() => this.#take({ by: 'unit', unit })}>
              <b>${WORDS.size.units[unit]}</b><span>${formatLength(longest * MM_PER[unit], this.unit)}</span>
            </button>`,
        )}
      </div>
      <div class="row known">
        <label>
          <span class="soft">${WORDS.size.orKnown}</span><br />
          <select data-means="size-axis" @change=${this.#pickAxis}>
            ${(['longest', 'x', 'y', 'z'] as const).map(
              (axis) => html`<option value=${axis} ?selected=${axis === this.axis}>${WORDS.size.axes[axis]}</option>`,
            )}
          </select>
        </label>
        <fl-length-field
          data-means="size-known"
          label=${WORDS.size.is}
          .unit=${this.unit}
          min="1"
          max="20000"
          @fl-length=${this.#takeKnown}
        ></fl-length-field>
      </div>
      ${
        this.measured === null
          ? html`<button aria-pressed=${this.tool === 'measure'} @click=${() => this.ask('measure')}>
              ${WORDS.size.measure}
            </button>`
          : html`<fl-length-field
              data-means="size-between"
              label=${WORDS.size.between}
              .unit=${this.unit}
              min="1"
              max="20000"
              @fl-length=${this.#takeMeasured}
            ></fl-length-field>`
      }
      ${this.#upQuestion()}
    </div>`;
  }

  #upQuestion() {
    return html`<fieldset>
      <legend>${WORDS.size.up}</legend>
      <div class="choices">
        ${(['x', 'y', 'z'] as const).map(
          (axis) =>
            html`<label>
              <input
                data-means="up"
                type="radio"
                name="up"
                .checked=${this.sculptPart?.upAxis === axis}
                @change=${() => this.send(setUpAxis(axis))}
              />${axis}
            </label>`,
        )}
      </div>
    </fieldset>`;
  }

  #likelyUnit(longest: number): ModelUnit | null {
    const fits = (unit: ModelUnit): boolean =>
      longest * MM_PER[unit] >= LIKELY_MM.least && longest * MM_PER[unit] <= LIKELY_MM.most;
    return (['mm', 'cm', 'm', 'in'] as const).find(fits) ?? null;
  }

  #take(scale: ScaleChoice): void {
    this.isChanging = false;
    this.send(setScale(scale));
  }

  #takeKnown(event: LengthEvent): void {
    this.#take({ by: 'size', axis: this.axis, mm: event.mm });
  }

  #takeMeasured(event: LengthEvent): void {
    const { sculpt } = this.bench;
    if (this.measured === null || sculpt === null) return;
    const [from, to] = this.measured.map((corner) => sculpt.fileVertex[corner]);
    this.dispatchEvent(new ViewEvent({ from: null, to: null }));
    this.#take({ by: 'points', from, to, mm: event.mm });
  }

  #pickAxis(event: Event): void {
    this.axis = (event.target as HTMLSelectElement).value as typeof this.axis;
  }

  #turnChanging(): void {
    if (this.isChanging) this.isChanging = false;
    else this.focusOn('.known fl-length-field');
  }
}
