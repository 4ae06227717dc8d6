import { LitElement, css, html, nothing, type PropertyValues } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { VerbEvent } from '../events.ts';
import { SHARED } from '../styles.ts';
import { TOLD_LINE } from '../told-line-style.ts';
import type { Hold } from './job-lock.ts';
import { KEEP_WORDS } from './keep-words.ts';

/** One line where another window works on the same job, with what can be done about it. Nothing can be changed here meanwhile. */
@customElement('fl-window-line')
export class WindowLine extends LitElement {
  static override styles = [
    SHARED,
    TOLD_LINE,
    css`
      :host {
        scroll-margin-block: 72px 11rem;
      }
      .told {
        border-width: var(--wide);
      }
      .refused {
        border-color: var(--wrong);
      }
    `,
  ];

  @property() hold: Hold = 'mine';
  /** How often something was to be changed all the same. */
  @property({ type: Number }) refusals = 0;

  /** What could not be done is told where the maker looks. */
  protected override updated(changed: PropertyValues<this>): void {
    if (changed.has('refusals') && this.refusals > 0) this.scrollIntoView({ block: 'nearest' });
  }

  protected override render() {
    if (this.hold === 'mine') return nothing;
    const { label, workHere, onlyLook, copy } = KEEP_WORDS.windows;
    const isRefused = this.refusals > 0;
    return html`<section class="told ${isRefused ? 'refused' : ''}" aria-label=${label}>
      <p role=${isRefused ? 'alert' : 'status'}>${this.#text()}</p>
      <div class="row">
        ${this.#verb('work-here', workHere)} ${this.hold === 'elsewhere' ? this.#verb('only-look', onlyLook) : nothing}
        ${this.#verb('open-copy', copy)}
      </div>
    </section>`;
  }

  /** A sentence that is told once more is heard once more. */
  #text(): string {
    const { elsewhere, looking, refused } = KEEP_WORDS.windows;
    if (this.refusals > 0) return `${refused}${this.refusals % 2 === 0 ? '\u00a0' : ''}`;
    return this.hold === 'elsewhere' ? elsewhere : looking;
  }

  #verb(id: string, label: string) {
    return html`<button @click=${() => this.dispatchEvent(new VerbEvent(id))}>${label}</button>`;
  }
}
