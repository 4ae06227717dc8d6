import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { StepPicture } from '../worker/shop-api.ts';
import { pageDrawing } from './page-drawing.ts';
import { SHARED } from './styles.ts';

/** How the prop looks when a step is done: the drawing of the build sheet. */
@customElement('fl-gluing-picture')
export class GluingPicture extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
      }
      svg {
        display: block;
        inline-size: 100%;
        max-block-size: var(--most, 22rem);
        background: var(--print);
        outline: var(--narrow) solid var(--rule-soft);
      }
      text {
        fill: var(--print-ink);
        font-family: var(--type);
      }
    `,
  ];

  @property({ attribute: false }) drawn: StepPicture | null = null;
  /** What it shows, for those who do not see it. */
  @property() label = '';

  protected override render() {
    if (this.drawn === null) return nothing;
    const { widthMm, heightMm } = this.drawn;
    return html`<svg viewBox="-2 -2 ${widthMm + 4} ${heightMm + 4}" role="img" aria-label=${this.label}>
      ${pageDrawing(this.drawn)}
    </svg>`;
  }
}
