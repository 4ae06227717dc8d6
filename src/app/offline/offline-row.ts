import { LitElement, css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { SHARED } from '../styles.ts';
import { OFFLINE } from './offline-state.ts';
import { OFFLINE_WORDS } from './offline-words.ts';

/** Whether the window works without a network, and the way to have it as a program of its own. */
@customElement('fl-offline-row')
export class OfflineRow extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: grid;
        grid-template-columns: 7.5em minmax(0, 1fr);
        align-items: baseline;
        margin-block: var(--s1);
      }
      span {
        font-size: var(--t-small);
      }
      span:first-child {
        color: var(--ink-soft);
      }
      button {
        justify-self: start;
        grid-column: 2;
      }
    `,
  ];

  override connectedCallback(): void {
    super.connectedCallback();
    OFFLINE.addEventListener('change', this.#onChange);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    OFFLINE.removeEventListener('change', this.#onChange);
  }

  protected override render() {
    const { keeping, install } = OFFLINE;
    return html`<span>${OFFLINE_WORDS.row}</span><span>${OFFLINE_WORDS.states[keeping]}</span> ${
        install === null ? nothing : html`<button @click=${install}>${OFFLINE_WORDS.install}</button>`
      }`;
  }

  #onChange = (): void => this.requestUpdate();
}

declare global {
  interface HTMLElementTagNameMap {
    'fl-offline-row': OfflineRow;
  }
}
