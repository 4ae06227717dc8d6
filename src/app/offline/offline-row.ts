import { LitElement, css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { FOOT_ROW } from '../foot-row-style.ts';
import { SHARED } from '../styles.ts';
import { OFFLINE } from './offline-state.ts';
import { OFFLINE_WORDS } from './offline-words.ts';

/** Whether the window works without a network, and the way to have it as a program of its own. */
@customElement('fl-offline-row')
export class OfflineRow extends LitElement {
  static override styles = [
    SHARED,
    FOOT_ROW,
    css`
      :host {
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
