import { LitElement, css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { SHARED } from './styles.ts';
import { WORDS } from './words.ts';

interface Work {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
  readonly text: string;
}

/** Works of others that are bundled, with their terms; fetched when the list is opened. */
@customElement('fl-licences')
export class Licences extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
        margin-block-start: var(--s4);
      }
      pre {
        white-space: pre-wrap;
        font-size: var(--t-small);
        max-block-size: 16rem;
        overflow-y: auto;
        margin: 0;
      }
    `,
  ];

  @state() private works: readonly Work[] | null = null;
  @state() private failed = false;

  protected override render() {
    return html`<details @toggle=${this.#open}>
      <summary>${WORDS.foot.licences}</summary>
      ${this.failed ? html`<p class="small">${WORDS.foot.noLicences}</p>` : nothing}
      ${(this.works ?? []).map(
        (work) =>
          html`<details>
            <summary>
              <span>${work.name} ${work.version} <span class="soft">${work.licence}</span></span>
            </summary>
            <pre tabindex="0">${work.text}</pre>
          </details>`,
      )}
    </details>`;
  }

  #open(): void {
    if (this.works !== null) return;
    void this.#load();
  }

  async #load(): Promise<void> {
    try {
      const reply = await fetch('licences.json');
      this.works = ((await reply.json()) as { works: Work[] }).works;
    } catch {
      this.failed = true;
    }
  }
}
