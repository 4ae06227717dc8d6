import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import data from '../../shared/cautions.json';
import { SHARED } from './styles.ts';

/** What can hurt at this step, folded to one line until it is wanted. */
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

  protected override render() {
    const mine = data.cautions.filter(
      ({ id, work }) => this.ids.includes(id) || work.some((kind) => this.work.includes(kind)),
    );
    if (mine.length === 0) return nothing;
    return html`<details>
      <summary>
        <span
          >${this.label}:
          <span class="names">${mine.map((caution) => caution.title.toLowerCase()).join(', ')}</span></span
        >
      </summary>
      <dl class="small">
        ${mine.map(
          (caution) =>
            html`<dt>${caution.title}</dt>
              <dd>${caution.text}</dd>`,
        )}
      </dl>
      <p class="small soft">${data.ending}</p>
    </details>`;
  }
}
