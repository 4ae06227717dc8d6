import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import data from '../../shared/cautions.json';
import { dataText } from './data-words.ts';
import { SHARED } from './styles.ts';
import { WORDS } from './words.ts';

/** How cautions stand: folded to one line until they are wanted, told in full, or by their names alone. */
export type CautionManner = 'folded' | 'told' | 'named';

/** What can hurt at this step. */
@customElement('fl-cautions')
export class Cautions extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
      }
      dt {
        font-weight: 700;
      }
      dd {
        margin-block-end: var(--s2);
      }
      .names {
        font-weight: 450;
      }
    `,
  ];

  /** Kinds of work whose cautions are told. */
  @property({ attribute: false }) work: readonly string[] = [];
  /** Cautions that are told beside those, by their ids. */
  @property({ attribute: false }) ids: readonly string[] = [];
  @property() label = '';
  @property() manner: CautionManner = 'folded';

  protected override render() {
    const mine = data.cautions.filter(
      ({ id, work }) => this.ids.includes(id) || work.some((kind) => this.work.includes(kind)),
    );
    if (mine.length === 0) return nothing;
    const names = html`<span class="names"
      >${WORDS.cautions.names(mine.map((caution) => dataText(caution.title)))}</span
    >`;
    if (this.manner === 'named') return html`${this.label} ${names}`;
    const texts = html`<dl class="small">
        ${mine.map(
          (caution) =>
            html`<dt>${dataText(caution.title)}</dt>
              <dd>${dataText(caution.text)}</dd>`,
        )}
      </dl>
      <p class="small soft">${dataText(data.ending)}</p>`;
    if (this.manner === 'told') return texts;
    return html`<details>
      <summary>
        <span>${this.label}: ${names}</span>
      </summary>
      ${texts}
    </details>`;
  }
}
