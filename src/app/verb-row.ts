import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { VerbEvent } from './events.ts';
import { SHARED } from './styles.ts';
import type { Verb } from './verb.ts';

/**
 * What is chosen, in words, and what can be done with it.
 * @slot fields of the chosen thing, before the verbs
 */
@customElement('fl-verb-row')
export class VerbRow extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--s2) var(--s3);
        padding: var(--s2) var(--s3);
        background: var(--paper-high);
        border: var(--narrow) solid var(--ink);
      }
      p {
        margin-inline-end: auto;
        font-size: var(--t-small);
        line-height: 1.3;
        max-inline-size: 52ch;
      }
      b {
        font-size: var(--t-body);
      }
      ::slotted(*) {
        flex: none;
      }
      @container (width < 720px) {
        :host {
          gap: var(--s1) var(--s2);
        }
        button {
          min-block-size: min(32px, var(--target));
          padding: 0 var(--s2);
        }
        p {
          max-inline-size: none;
        }
      }
    `,
  ];

  /** Name of the chosen thing. */
  @property() name = '';
  /** Its figures, one phrase. */
  @property() facts = '';
  @property({ attribute: false }) verbs: readonly Verb[] = [];
  /** What Esc does now, or empty. */
  @property() back = '';

  protected override render() {
    return html`<p><b>${this.name}</b> ${this.facts}</p>
      <slot></slot>
      ${this.verbs.map(
        (verb) =>
          html`<button
            aria-keyshortcuts=${verb.key?.toUpperCase() ?? nothing}
            aria-pressed=${verb.isOn ?? nothing}
            @click=${() => this.dispatchEvent(new VerbEvent(verb.id))}
          >
            ${verb.label}${verb.key === undefined ? nothing : html`<kbd>${verb.key.toUpperCase()}</kbd>`}
          </button>`,
      )}
      ${
        this.back === ''
          ? nothing
          : html`<button class="plain" @click=${() => this.dispatchEvent(new VerbEvent('back'))}>
              ${this.back}<kbd>Esc</kbd>
            </button>`
      }`;
  }
}
