import { LitElement, css, html, nothing, type PropertyValues } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { SHARED } from './styles.ts';
import { TOLD_LINE } from './told-line-style.ts';
import type { Notice } from './workbench.ts';
import { WORDS } from './words.ts';

/** One sentence about the job as a whole, with its remedy; stays until it is closed or no longer true. */
@customElement('fl-notice-line')
export class NoticeLine extends LitElement {
  static override styles = [
    SHARED,
    TOLD_LINE,
    css`
      :host {
        /* What comes back above it when the picture is drawn anew does not push it out of sight. */
        scroll-margin-block: 72px 11rem;
      }
      .problem {
        border: var(--wide) solid var(--wrong);
      }
    `,
  ];

  @property({ attribute: false }) notice: Notice | null = null;

  /** On a phone the sheet lies below the bench: a problem told out of sight would not be told. */
  protected override updated(changed: PropertyValues<this>): void {
    if (changed.has('notice') && this.notice?.tone === 'problem') this.scrollIntoView({ block: 'nearest' });
  }

  protected override render() {
    const { notice } = this;
    if (notice === null) return nothing;
    return html`<div class="told ${notice.tone}" role=${notice.tone === 'problem' ? 'alert' : 'status'}>
      <p>${notice.text}</p>
      ${[...(notice.remedy === undefined ? [] : [notice.remedy]), ...(notice.also ?? [])].map(
        (way) => html`<button @click=${() => way.run()}>${way.label}</button>`,
      )}
      <button class="plain" @click=${() => this.dispatchEvent(new NoticeDoneEvent())}>
        ${notice.close ?? WORDS.notice.close}
      </button>
    </div>`;
  }
}

/** The maker has read the notice. */
export class NoticeDoneEvent extends Event {
  constructor() {
    super('fl-notice-done', { bubbles: true, composed: true });
  }
}

declare global {
  interface HTMLElementEventMap {
    'fl-notice-done': NoticeDoneEvent;
  }
}
