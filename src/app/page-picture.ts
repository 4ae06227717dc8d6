import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Page } from '../model/page.ts';
import { pageDrawing } from './page-drawing.ts';
import { SHARED } from './styles.ts';
import { WORDS } from './words.ts';

/** One printed page, drawn from the very record the PDF is made of. Drawn when it first comes near the window's view. */
@customElement('fl-page-picture')
export class PagePicture extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
      }
      svg {
        display: block;
        inline-size: 100%;
        block-size: 100%;
        background: var(--print);
        outline: var(--narrow) solid var(--rule);
      }
      text {
        fill: var(--print-ink);
        font-family: var(--type);
      }
    `,
  ];

  @property({ attribute: false }) page: Page | null = null;
  /** Thinnest line, px of the picture's width of 1000: small pictures stay readable. */
  @property({ type: Number }) boldness = 0;
  #isNear = false;
  #watcher: IntersectionObserver | null = null;

  override connectedCallback(): void {
    super.connectedCallback();
    this.#watcher = new IntersectionObserver(([entry]) => this.#seen(entry.isIntersecting), { rootMargin: '200px' });
    this.#watcher.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#watcher?.disconnect();
  }

  protected override render() {
    const { page } = this;
    if (page === null) return nothing;
    const { widthMm, heightMm } = page;
    return html`<svg viewBox="0 0 ${widthMm} ${heightMm}" role="img" aria-label=${WORDS.paper.picture(page.name)}>
      ${
        this.#isNear
          ? pageDrawing(page, (this.boldness * widthMm) / 1000)
          : nothing
      }
    </svg>`;
  }

  #seen(isNear: boolean): void {
    if (!isNear || this.#isNear) return;
    this.#isNear = true;
    this.requestUpdate();
  }
}
