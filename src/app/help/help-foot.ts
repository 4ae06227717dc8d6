import { LitElement, css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { VerbEvent } from '../events.ts';
import { FOOT_ROW } from '../foot-row-style.ts';
import { SHARED } from '../styles.ts';
import { HELP_WORDS } from './help-words.ts';

/** The ways to the help, at the foot of the job sheet. */
@customElement('fl-help-foot')
export class HelpFoot extends LitElement {
  static override styles = [
    SHARED,
    FOOT_ROW,
    css`
      :host {
        padding-block: var(--s2);
      }
      h2 {
        font-size: var(--t-small);
        font-weight: 450;
        color: var(--ink-soft);
      }
      button.plain {
        min-block-size: var(--target);
      }
    `,
  ];

  protected override render() {
    const { heading, fields, keys, words, guide } = HELP_WORDS.foot;
    const way = (verb: string, label: unknown) =>
      html`<button class="plain" @click=${() => this.dispatchEvent(new VerbEvent(verb))}>${label}</button>`;
    return html`<h2>${heading}</h2>
      <div>
        <p class="small">${fields}</p>
        <div class="row">
          ${way('help-keys', html`${keys}<kbd>?</kbd>`)} ${way('help-words', words)} ${way('guide', guide)}
        </div>
      </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'fl-help-foot': HelpFoot;
  }
}
