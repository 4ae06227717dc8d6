import { LitElement, css, html } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { VerbEvent } from '../events.ts';
import { SHARED } from '../styles.ts';
import type { NextStep } from './next-step.ts';
import { VERDICT_WORDS } from './verdict-words.ts';

/** The one button that leads on, always at the head of the job sheet. */
@customElement('fl-next-button')
export class NextButton extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
        position: sticky;
        inset-block-start: 0;
        z-index: 1;
        margin-inline: calc(-1 * var(--edge, 0px));
        padding: var(--s2) var(--edge, 0px);
        background: var(--paper);
      }
      button {
        display: flex;
        justify-content: space-between;
        align-items: center;
        gap: var(--s3);
        inline-size: 100%;
        min-block-size: 44px;
        text-align: start;
        font-size: var(--t-body);
      }
    `,
  ];

  @property({ attribute: false }) step: NextStep | null = null;

  protected override render() {
    const { step } = this;
    if (step === null) return html``;
    const what = VERDICT_WORDS.next[step.kind](step.count);
    return html`<button
      class=${step.verb === null ? '' : 'next'}
      ?disabled=${step.verb === null}
      aria-keyshortcuts="."
      @click=${() => this.dispatchEvent(new VerbEvent('next-step'))}
    >
      <span>${step.verb === null ? what : VERDICT_WORDS.nextIs(what)}</span><kbd>.</kbd>
    </button>`;
  }
}
