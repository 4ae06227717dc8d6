import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Progress } from '../worker/workshop-api.ts';
import { VerbEvent } from './events.ts';
import { toldText } from './finding-text.ts';
import { SHARED } from './styles.ts';
import { WORDS } from './words.ts';

/** What is being worked out, how far it is, and the way to call it off: one quiet line that short work never shows. */
@customElement('fl-progress-line')
export class ProgressLine extends LitElement {
  static override styles = [
    SHARED,
    css`
      div {
        display: flex;
        align-items: center;
        gap: var(--s3);
        padding: var(--s1) var(--s3);
        background: var(--paper-high);
        border: var(--narrow) solid var(--ink);
        font-size: var(--t-small);
        /* Work shorter than a quarter of a second is not worth a word. */
        animation: appear 1ms 250ms both;
      }
      progress {
        appearance: none;
        inline-size: 120px;
        block-size: 8px;
        border: var(--narrow) solid var(--ink);
        background: none;
      }
      progress::-webkit-progress-bar {
        background: none;
      }
      progress::-webkit-progress-value {
        background: var(--ink);
      }
      progress::-moz-progress-bar {
        background: var(--ink);
      }
      span {
        min-inline-size: 11em;
      }
      @keyframes appear {
        from {
          visibility: hidden;
        }
        to {
          visibility: visible;
        }
      }
    `,
  ];

  @property({ attribute: false }) progress: Progress | null = null;
  /** Name of the file that is being read while another job is still seen; null where there is none. */
  @property({ attribute: false }) reading: string | null = null;

  protected override render() {
    const { progress, reading } = this;
    if (progress === null)
      return reading === null ? nothing : html`<div role="status"><span>${WORDS.stage.reading(reading)}</span></div>`;
    return html`<div>
      <progress max="1" .value=${progress.done} aria-label=${WORDS.progress.label}></progress>
      <span>${progress.text === '' ? WORDS.progress.begins : toldText(progress.text, 'mm')}</span>
      <button class="plain" @click=${() => this.dispatchEvent(new VerbEvent('cancel'))}>
        ${WORDS.progress.cancel}
      </button>
    </div>`;
  }
}
