import { LitElement, css, html, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Page } from '../model/page.ts';
import type { Words } from '../model/template.ts';
import { drawnLines, type DrawnLines } from '../viewport/drawing-lines.ts';
import { SHARED } from './styles.ts';
import { WORDS } from './words.ts';

/** Height of a capital as a share of the type size, for the window's type (measured on its H). */
const CAPITAL_SHARE = 0.67;

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
          ? svg`<g transform="matrix(1 0 0 -1 0 ${heightMm})">
            ${drawnLines(page.drawing).map((lines) => this.#lines(lines))}
            ${page.drawing.words.map(words)}
          </g>`
          : nothing
      }
    </svg>`;
  }

  #lines({ path, widthMm, dashMm, grey, isFilled }: DrawnLines) {
    const tone = Math.round(255 * grey);
    const colour = `rgb(${tone} ${tone} ${tone})`;
    const width = Math.max(widthMm, (this.boldness * (this.page?.widthMm ?? 0)) / 1000);
    return svg`<path d=${path} fill=${isFilled ? colour : 'none'} stroke=${colour} stroke-width=${width}
      stroke-dasharray=${dashMm.length === 0 ? nothing : dashMm.join(' ')} stroke-linejoin="round" />`;
  }

  #seen(isNear: boolean): void {
    if (!isNear || this.#isNear) return;
    this.#isNear = true;
    this.requestUpdate();
  }
}

function words({ text, at, angleRad, heightMm, align, bold, wide = 1 }: Words) {
  const anchor = { left: 'start', centre: 'middle', right: 'end' }[align];
  const angle = (angleRad * 180) / Math.PI;
  return svg`<text transform="translate(${at.x} ${at.y}) rotate(${angle}) scale(${wide} -1)" text-anchor=${anchor}
    font-size=${heightMm / CAPITAL_SHARE} font-weight=${bold === true ? 700 : 400}>${text}</text>`;
}
