import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatInches, formatMm } from '../base/format-length.ts';
import { JobSection } from './job-section.ts';
import { SHARED } from './styles.ts';
import { measuresInHand } from './tape-plane.ts';
import { holdVerbOf } from './tape-verbs.ts';
import { FIRST_VIEW, type ViewState } from './view-state.ts';
import { WORDS } from './words.ts';

/** Over the scene while a tape is in hand: which one, its girth where it is, and how it is moved. */
@customElement('fl-tape-row')
export class TapeRow extends JobSection {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
        max-inline-size: min(27rem, 100%);
        padding: var(--s1) var(--s3);
        border: var(--narrow) solid var(--ink);
        background: var(--paper-high);
        font-size: var(--t-small);
      }
      div {
        display: flex;
        flex-wrap: wrap;
        align-items: baseline;
        gap: 0 var(--s3);
      }
      button {
        margin-inline-start: auto;
      }
      @container (width < 720px) {
        .how {
          display: none;
        }
      }
    `,
  ];

  @property({ attribute: false }) view: ViewState = FIRST_VIEW;

  protected override render() {
    const { plane } = this.view;
    const tape = this.sculptPart?.tapes?.find(({ id }) => plane?.of === 'tape' && id === plane.id);
    if (tape === undefined) return nothing;
    const words = WORDS.wear;
    return html`<div role="group" aria-label=${tape.name}>
        <b>${tape.name}</b> <span aria-live="polite">${this.#girth()}</span>
        <button class="plain" @click=${() => this.ask(holdVerbOf(tape.id))}>${words.putAway}</button>
      </div>
      <p class="soft how">${words.handKeys}</p>`;
  }

  #girth(): string {
    const measures = measuresInHand(this.bench, this.view);
    if (measures === null) return '';
    const { back } = measures;
    const words = WORDS.wear;
    return back === null ? words.beside : words.inside(formatMm(back.girthMm), formatInches(back.girthMm));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'fl-tape-row': TapeRow;
  }
}
