import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatFine, formatLength } from '../base/format-length.ts';
import { shiftedPlane } from '../viewport/plane-moves.ts';
import type { BenchPlane } from '../viewport/bench-contract.ts';
import { keyCap } from './key-cap.ts';
import { ViewEvent } from './events.ts';
import { JobSection } from './job-section.ts';
import './length-field.ts';
import { putTogether } from './put-together.ts';
import type { LengthEvent } from './length-field.ts';
import { MARK_WORDS } from './mark-words.ts';
import { LOOK_WORDS as WORDS } from './look-words.ts';
import { middlePlane, otherHalf, placeAlong, type SectionFacing } from './section-plane.ts';
import { SHARED } from './styles.ts';
import { LOOKS } from './looks.ts';
import './tape-row.ts';
import { FIRST_VIEW, type ViewState } from './view-state.ts';

const FACINGS: readonly SectionFacing[] = ['front', 'side', 'level'];

/** The row over the scene: which surface is looked at, and where everything is cut open, with the figures of the cut. */
@customElement('fl-look-row')
export class LookRow extends JobSection {
  static override styles = [
    SHARED,
    css`
      form {
        display: contents;
      }
      :host {
        display: flex;
        flex-wrap: wrap;
        justify-content: flex-end;
        align-items: center;
        gap: var(--s1) var(--s3);
        pointer-events: none;
      }
      :host > * {
        pointer-events: auto;
      }
      fieldset,
      .cut {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0 var(--s3);
        margin: 0;
        padding: 0 var(--s3);
        border: var(--narrow) solid var(--ink);
        background: var(--paper-high);
      }
      legend {
        float: inline-start;
        padding: 0 var(--s2) 0 0;
        font-size: var(--t-small);
        color: var(--ink-soft);
      }
      label {
        display: inline-flex;
        align-items: center;
        gap: var(--s1);
        min-block-size: var(--target);
        font-size: var(--t-small);
        cursor: pointer;
      }
      .cut {
        max-inline-size: min(27rem, 100%);
        padding-block: var(--s1);
        font-size: var(--t-small);
      }
      .cut > input,
      .cut label input {
        inline-size: 10rem;
        accent-color: var(--ink);
      }
      .cut p:not(.unseen) {
        inline-size: 24rem;
        max-inline-size: 100%;
        margin: 0;
        font-variant-numeric: tabular-nums;
      }
      @container (width < 720px) {
        legend {
          display: none;
        }
        /* One row: what is looked at is told by its ground, as a pressed button is. */
        fieldset {
          column-gap: 0;
          padding: 0;
        }
        fieldset label {
          position: relative;
          padding-inline: var(--s2);
        }
        fieldset input {
          position: absolute;
          inset: 0;
          inline-size: auto;
          block-size: auto;
          opacity: 0;
        }
        fieldset label:has(:checked) {
          background: var(--lamp);
          color: var(--on-lamp);
        }
        fieldset label:has(:focus-visible) {
          outline: 3px solid var(--lamp-ink);
          outline-offset: -3px;
        }
        fieldset label:has(:disabled) {
          color: var(--ink-soft);
          text-decoration: line-through;
        }
        .cut,
        .cut p:not(.unseen) {
          max-inline-size: 100%;
          inline-size: auto;
        }
        /* How it works is read once; there it would hide what it speaks of. */
        .how {
          display: none;
        }
      }
    `,
  ];

  @property({ attribute: false }) view: ViewState = FIRST_VIEW;

  protected override render() {
    const { view } = this;
    const { sculpt } = this.bench;
    if (sculpt === null || this.bench.shell === null || view.stage > 1) return nothing;
    const isCut = view.plane?.of === 'section';
    return html`${
        view.stage === 0
          ? // Chromium holds on to radios that were taken away, unless they are of a form.
            html`<form @submit=${(event: Event) => event.preventDefault()}>
              <fieldset>
                <legend>${WORDS.legend}</legend>
                ${LOOKS.map(
                  (look) =>
                    html`<label>
                      <input
                        data-means="look"
                        type="radio"
                        name="look"
                        .checked=${view.look === look}
                        ?disabled=${look === 'prop' && this.bench.dryFit === null}
                        @change=${() => this.dispatchEvent(new ViewEvent({ look }))}
                      />
                      ${WORDS.looks[look]}
                    </label>`,
                )}
              </fieldset>
            </form>`
          : nothing
      }
      <button aria-pressed=${isCut} aria-keyshortcuts="U" @click=${() => this.ask('cut-open')}>
        ${WORDS.cut}${keyCap('U')}
      </button>
      ${view.look === 'prop' || view.stage > 0 ? this.#order() : nothing}
      ${
        view.plane?.of === 'tape'
          ? html`<fl-tape-row .project=${this.project} .bench=${this.bench} .view=${view}></fl-tape-row>`
          : nothing
      }
      ${isCut && view.plane !== null ? this.#cut(view.plane.plane) : nothing}`;
  }

  /** How many pieces are in place while they are taken apart, and which of these is glued last. */
  #order() {
    const { view } = this;
    if (view.look === 'prop' && view.prop === null) return html`<div class="cut"><p>${WORDS.making}</p></div>`;
    const { some, all, last } = putTogether(this.bench, view);
    const piece = last === null ? undefined : this.bench.pieces?.pieces[last];
    return html`<div class="cut in-place">
      <p aria-live="polite">
        ${WORDS.inPlace(some, all)} ${piece ? WORDS.lastOn(`${piece.number} ${piece.name}`) : nothing}
      </p>
    </div>`;
  }

  #cut(plane: BenchPlane) {
    const { sculpt } = this.bench;
    if (sculpt === null) return nothing;
    const up = this.sculptPart?.upAxis ?? 'y';
    const { at, reach } = placeAlong(sculpt, plane);
    return html`<div class="cut" role="group" aria-label=${WORDS.cut}>
      ${FACINGS.map(
        (facing) =>
          html`<button class="plain" @click=${() => this.#set(middlePlane(sculpt, up, facing))}>
            ${WORDS.facings[facing]}
          </button>`,
      )}
      <button class="plain" @click=${() => this.#set(otherHalf(plane))}>${WORDS.other}</button>
      <input
        data-means="section-place"
        type="range"
        aria-label=${WORDS.place(this.#signed(at))}
        min=${-reach}
        max=${reach}
        step="0.5"
        .value=${String(at)}
        @input=${(event: Event) => this.#set(shiftedPlane(plane, (event.target as HTMLInputElement).valueAsNumber - at))}
      />
      ${this.#part()}
      <p aria-live="polite">${this.#figures()}</p>
      <p class="unseen">${WORDS.keys}</p>
    </div>`;
  }

  /** Parting where the plane cuts, or at equal distances from there. */
  #part() {
    const { verbs, every } = MARK_WORDS;
    return html`<div class="row">
      <button @click=${() => this.ask('part-at-plane')}>${verbs.atPlane}${keyCap('8')}</button>
      <button @click=${() => this.ask('part-at-planes')}>${verbs.atPlanes}${keyCap('9')}</button>
      <fl-length-field
        data-means="spacing"
        class="inline"
        label=${every}
        .mm=${this.view.spacingMm}
        .unit=${this.unit}
        min="5"
        max="2000"
        @fl-length=${({ mm }: LengthEvent) => this.dispatchEvent(new ViewEvent({ spacingMm: mm }))}
      ></fl-length-field>
    </div>`;
  }

  #figures(): string {
    const { section, thicknessMm } = this.view;
    if (section === null) return WORDS.missed;
    const size = WORDS.size(formatLength(section.breadthMm, this.unit), formatLength(section.heightMm, this.unit));
    return `${size} ${thicknessMm === null ? WORDS.point : WORDS.thick(formatFine(thicknessMm, this.unit))}`;
  }

  #signed(mm: number): string {
    return `${mm < 0 ? '\u2212' : ''}${formatLength(Math.abs(mm), this.unit)}`;
  }

  #set(plane: BenchPlane): void {
    this.dispatchEvent(new ViewEvent({ plane: { of: 'section', plane } }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'fl-look-row': LookRow;
  }
}
