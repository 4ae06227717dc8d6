import { LitElement, css, html, nothing, type PropertyValues } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Page } from '../model/page.ts';
import { ChooseEvent } from './events.ts';
import { InSight } from './in-sight.ts';
import './page-picture.ts';
import { SHARED } from './styles.ts';
import { NOTHING } from './view-state.ts';
import { WORDS } from './words.ts';

/** The chosen page laid over the bench, as it will come out of the printer. */
@customElement('fl-page-view')
export class PageView extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: grid;
        grid-template-rows: minmax(0, 1fr) auto;
        gap: var(--s3);
        padding: var(--s4);
        background: var(--bench-ground);
      }
      fl-page-picture {
        min-block-size: 0;
        margin-inline: auto;
        block-size: 100%;
        max-inline-size: 100%;
      }
      /* The words keep one width, so that the buttons stay under the pointer while pages are turned. */
      .turn {
        display: grid;
        grid-template-columns: auto minmax(0, 14em) auto;
        justify-content: center;
        align-items: center;
        gap: var(--s2) var(--s3);
      }
      .turn span {
        text-align: center;
      }
      .turn .back {
        grid-column: 1 / -1;
        justify-self: center;
      }
    `,
  ];

  @property({ attribute: false }) pages: readonly Page[] = [];
  /** Which page is laid out. */
  @property({ type: Number }) at = 0;

  readonly #sight = new InSight(this);

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#sight.leave();
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (changed.has('at')) this.#sight.bring();
  }

  protected override render() {
    const page = this.pages[this.at];
    if (page === undefined) return nothing;
    return html`<fl-page-picture .page=${page}></fl-page-picture>
      <div class="turn">
        <button ?disabled=${this.at === 0} @click=${() => this.#turn(-1)}>${WORDS.paper.before}</button>
        <span>${WORDS.paper.place(WORDS.paper.pageName(page), this.at + 1, this.pages.length)}</span>
        <button ?disabled=${this.at === this.pages.length - 1} @click=${() => this.#turn(1)}>
          ${WORDS.paper.next}
        </button>
        <button class="back" @click=${() => this.dispatchEvent(new ChooseEvent(NOTHING))}>
          ${WORDS.paper.close}<kbd>Esc</kbd>
        </button>
      </div>`;
  }

  #turn(way: number): void {
    this.dispatchEvent(new ChooseEvent({ kind: 'page', page: this.at + way }));
  }
}
