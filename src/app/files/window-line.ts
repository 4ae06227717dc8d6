import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { VerbEvent } from '../events.ts';
import { SHARED } from '../styles.ts';
import { TOLD_LINE } from '../told-line-style.ts';
import type { Hold } from './job-lock.ts';
import { KEEP_WORDS } from './keep-words.ts';

/** One line where another window works on the same job, with what can be done about it. */
@customElement('fl-window-line')
export class WindowLine extends LitElement {
  static override styles = [
    SHARED,
    TOLD_LINE,
    css`
      .told {
        border-width: var(--wide);
      }
    `,
  ];

  @property() hold: Hold = 'mine';

  protected override render() {
    if (this.hold === 'mine') return nothing;
    const { label, elsewhere, looking, workHere, onlyLook, copy } = KEEP_WORDS.windows;
    return html`<section class="told" aria-label=${label}>
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
