import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { formatNumber } from '../base/format-length.ts';
import type { PrinterProfile } from '../model/printer.ts';
import { choosePrinter, forgetPrinter, keepPrinter, measurePrinter, printerOf } from '../project/printer-commands.ts';
import { WishEvent } from './events.ts';
import { FIELDS_STYLE } from './fields-style.ts';
import { findingText } from './finding-text.ts';
import { JobSection } from './job-section.ts';
import './length-field.ts';
import type { LengthEvent } from './length-field.ts';
import { SHARED } from './styles.ts';
import { WORDS } from './words.ts';

/** What is being typed; diagonals are both there or do not count. */
interface Typed {
  readonly name?: string;
  readonly acrossMm?: number;
  readonly upMm?: number;
  readonly risingMm?: number;
  readonly fallingMm?: number;
}

/** Readings under this are of the small square, mm. */
const SMALL_UNDER_MM = 75;

/** Which printer the pages are drawn for, and what was measured of it. */
@customElement('fl-printer-fields')
export class PrinterFields extends JobSection {
  static override styles = [
    SHARED,
    FIELDS_STYLE,
    css`
      .fields {
        align-items: end;
      }
      fieldset {
        margin-block-start: var(--s2);
      }
    `,
  ];

  /** Printers measured in this job or in others, kept in this browser. */
  @property({ attribute: false }) known: readonly PrinterProfile[] = [];
  @state() private isMeasuring = false;
  @state() private typed: Typed = {};
  @state() private fault = '';

  protected override render() {
    const { project } = this;
    if (project === null) return nothing;
    const printer = printerOf(project);
    return html`<label>
        <span class="soft">${WORDS.printer.printer}</span><br />
        <select data-means="printer" @change=${this.#choose}>
          <option value="" ?selected=${printer === null && !this.isMeasuring}>${WORDS.printer.any}</option>
          ${this.#all().map(
            ({ name }) =>
              html`<option value=${`=${name}`} ?selected=${name === printer?.name && !this.isMeasuring}>
                ${name}
              </option>`,
          )}
          <option value="+" ?selected=${this.isMeasuring}>${WORDS.printer.another}</option>
        </select>
      </label>
      ${printer === null || this.isMeasuring ? nothing : this.#kept(printer)}
      ${this.isMeasuring || printer !== null ? this.#form(this.isMeasuring ? null : printer) : nothing}`;
  }

  /** Those of the job first; of two with one name the job's counts. */
  #all(): readonly PrinterProfile[] {
    const own = this.project?.printers ?? [];
    return [...own, ...this.known.filter(({ name }) => !own.some((profile) => profile.name === name))];
  }

  #kept({ name, acrossShare, upShare, leanRad }: PrinterProfile) {
    const say = (share: number): string => `${formatNumber(share * 100, 2)} %`;
    const lean = Math.abs(leanRad) < 1e-4 ? null : `${formatNumber((leanRad * 180) / Math.PI, 2)}°`;
    return html`<p class="small soft" role="status">${WORDS.printer.now(say(acrossShare), say(upShare), lean)}</p>
      <div><button @click=${() => this.#forget(name)}>${WORDS.printer.forget(name)}</button></div>`;
  }

  #form(again: PrinterProfile | null) {
    const words = WORDS.printer;
    const { typed } = this;
    return html`<details ?open=${again === null}>
      <summary>${words.heading(again?.name ?? null)}</summary>
      <fieldset class="stack">
        <p class="small soft">${again === null ? words.how : words.howAgain(again.name)}</p>
        ${
          again === null
            ? html`<label
                >${words.name}
                <input
                  data-means="printer-name"
                  type="text"
                  autocomplete="off"
                  .value=${typed.name ?? ''}
                  @input=${this.#takeName}
              /></label>`
            : nothing
        }
        <div class="fields">
          ${this.#length(words.across, 'acrossMm')} ${this.#length(words.up, 'upMm')}
          ${this.#length(words.rising, 'risingMm')} ${this.#length(words.falling, 'fallingMm')}
        </div>
        <p class="small soft">${words.diagonals}</p>
        <div>
          <button
            ?disabled=${typed.acrossMm === undefined || typed.upMm === undefined}
            @click=${() => this.#measure(again)}
          >
            ${words.keep(again?.name ?? typed.name?.trim() ?? '')}
          </button>
        </div>
        <p class="small wrong" role="status">${this.fault}</p>
      </fieldset>
    </details>`;
  }

  #length(label: string, key: 'acrossMm' | 'upMm' | 'risingMm' | 'fallingMm') {
    return html`<fl-length-field
      data-means=${`printer-${key}`}
      .label=${label}
      .mm=${this.typed[key] ?? null}
      .unit=${this.unit}
      min="30"
      max="200"
      @fl-length=${(event: LengthEvent) => (this.typed = { ...this.typed, [key]: event.mm })}
    ></fl-length-field>`;
  }

  #takeName(event: Event): void {
    this.typed = { ...this.typed, name: (event.target as HTMLInputElement).value };
  }

  #choose(event: Event): void {
    const { value } = event.target as HTMLSelectElement;
    this.isMeasuring = value === '+';
    this.typed = {};
    this.fault = '';
    if (value === '+') return;
    const profile = this.#all().find(({ name }) => `=${name}` === value);
    const isOwn = this.project?.printers?.some(({ name }) => name === profile?.name) === true;
    if (profile === undefined || isOwn) this.send(choosePrinter(profile?.name ?? null));
    else this.send(keepPrinter(profile));
  }

  #measure(again: PrinterProfile | null): void {
    const { name = '', acrossMm, upMm, risingMm, fallingMm } = this.typed;
    if (acrossMm === undefined || upMm === undefined) return;
    const nominalMm = acrossMm < SMALL_UNDER_MM ? 50 : 100;
    const diagonals = risingMm === undefined || fallingMm === undefined ? {} : { diagonals: { risingMm, fallingMm } };
    const measured = measurePrinter(again?.name ?? name, { nominalMm, acrossMm, upMm, ...diagonals }, again);
    if (!measured.ok) {
      this.fault = findingText(measured.problem, this.unit);
      return;
    }
    const { profile } = measured.value;
    this.fault = '';
    this.typed = {};
    this.isMeasuring = false;
    this.send(keepPrinter(profile));
    const others = this.known.filter(({ name: other }) => other !== profile.name);
    this.dispatchEvent(new WishEvent({ printers: [...others, profile] }));
  }

  #forget(name: string): void {
    this.send(forgetPrinter(name));
    this.dispatchEvent(new WishEvent({ printers: this.known.filter((profile) => profile.name !== name) }));
  }
}
