import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { VerbEvent } from '../events.ts';
import { SHARED } from '../styles.ts';
import type { Hold } from './job-lock.ts';
import { KEEP_WORDS } from './keep-words.ts';

/** One line where another window works on the same job, with what can be done about it. */
@customElement('fl-window-line')
export class WindowLine extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
        margin-block-end: var(--s4);
      }
      section {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--s1) var(--s3);
        padding: var(--s2) var(--s3);
        border: var(--wide) solid var(--ink);
        background: var(--paper-high);
        font-size: var(--t-small);
      }
      p {
        flex: 1 1 14em;
      }
    `,
  ];

  @property() hold: Hold = 'mine';

  protected override render() {
    if (this.hold === 'mine') return nothing;
    const { label, elsewhere, looking, workHere, onlyLook, copy } = KEEP_WORDS.windows;
    return html`<section aria-label=${label}>
      <p role="status">${this.hold === 'elsewhere' ? elsewhere : looking}</p>
      <div class="row">
        ${this.#verb('work-here', workHere)} ${this.hold === 'elsewhere' ? this.#verb('only-look', onlyLook) : nothing}
        ${this.#verb('open-copy', copy)}
      </div>
    </section>`;
  }

  #verb(id: string, label: string) {
    return html`<button @click=${() => this.dispatchEvent(new VerbEvent(id))}>${label}</button>`;
  }
}
