import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { besideOf } from './bench-state.ts';
import './elevation.ts';
import { JobSection } from './job-section.ts';
import { ChooseEvent } from './events.ts';
import './piece-picture.ts';
import './sheet-picture.ts';
import { SHARED } from './styles.ts';
import { FIRST_VIEW, NOTHING, type ViewState } from './view-state.ts';
import { WORDS } from './words.ts';

/** The bench without 3D: the sculpt from the front, its pieces flat, the sheets from above. */
@customElement('fl-flat-bench')
export class FlatBench extends JobSection {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
        overflow: auto;
        padding: var(--s6);
        /* What is looked at stands over its top. */
        padding-block-start: calc(var(--target) + 2 * var(--s6));
      }
      .pieces {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(140px, 1fr));
        gap: var(--s6) var(--s4);
        margin-block-start: var(--s4);
      }
      .pieces button {
        display: grid;
        gap: var(--s2);
        border: 0;
        background: none;
        text-align: start;
        padding: var(--s2);
      }
      .pieces button[aria-pressed='true'] {
        background: var(--lamp);
      }
      fl-piece-picture {
        block-size: 130px;
      }
      .sheets {
        display: grid;
        gap: var(--s6);
        margin-block-start: var(--s4);
      }
    `,
  ];

  @property({ attribute: false }) view: ViewState = FIRST_VIEW;
  @property() up: 'x' | 'y' | 'z' = 'y';
  /** Why there is no 3D: `missing` or `lost`. */
  @property() reason = 'missing';

  protected override render() {
    const { sculpt, pieces, sheets } = this.bench;
    const { stage } = this.view;
    return html`<p class="small">${this.reason === 'lost' ? WORDS.stage.lost : WORDS.stage.no3d}</p>
      ${stage < 0.5 && sculpt !== null ? html`<fl-elevation .sculpt=${sculpt} .up=${this.up} .unit=${this.unit}></fl-elevation>` : nothing}
      ${stage < 2.5 ? this.#pieces() : nothing}
      ${
        stage >= 2.5 && pieces !== null
          ? html`<div class="sheets">
              ${(sheets?.sheets ?? []).map(
                (sheet) =>
                  html`<fl-sheet-picture
                    .sheet=${sheet}
                    .pieces=${pieces.pieces}
                    .beside=${besideOf(this.bench)}
                    .templates=${pieces.templates}
                    .choice=${this.view.choice}
                  ></fl-sheet-picture>`,
              )}
            </div>`
          : nothing
      }`;
  }

  #pieces() {
    const { pieces } = this.bench;
    const { choice } = this.view;
    if (pieces === null) return nothing;
    return html`<div class="pieces">
      ${pieces.pieces.map((piece) => {
        const isChosen = choice.kind === 'piece' && choice.piece === piece.id;
        return html`<button
          aria-pressed=${isChosen}
          @click=${() => this.dispatchEvent(new ChooseEvent(isChosen ? NOTHING : { kind: 'piece', piece: piece.id }))}
        >
          <fl-piece-picture
            .template=${pieces.templates.find((template) => template.piece === piece.id) ?? null}
          ></fl-piece-picture>
          <span>${piece.number} ${piece.name}</span>
        </button>`;
      })}
    </div>`;
  }
}
