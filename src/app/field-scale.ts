import { LitElement, css, html, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatNumber } from '../base/format-length.ts';
import { stretchColour } from '../viewport/stretch-colours.ts';
import { SHARED } from './styles.ts';

const STEPS = 41;

/** The scale of a figure that is coloured on the stage: less than nothing on the left, more on the right, with needles at the figures under the pointer. */
@customElement('fl-field-scale')
export class FieldScale extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
      }
      svg {
        display: block;
        inline-size: 100%;
        block-size: 46px;
        overflow: visible;
      }
      text {
        font-size: 0.8333rem;
        fill: var(--ink);
      }
      .tick {
        stroke: var(--ink);
      }
      .needle {
        fill: var(--ink);
        stroke: var(--paper);
      }
    `,
  ];

  /** What the scale says, for those who do not see it. */
  @property() label = '';
  /** Figure at both ends, > 0: beyond it the end's colour is kept. */
  @property({ type: Number }) limit = 1;
  /** Figure from which it is told of; its ticks stand on both sides. */
  @property({ type: Number }) notice = 0.5;
  /** Figures under the pointer. */
  @property({ attribute: false }) needles: readonly number[] = [];

  protected override render() {
    const { limit, notice, needles } = this;
    const x = (figure: number): number => 200 + (200 * Math.max(-limit, Math.min(limit, figure))) / limit;
    const ticks = [-limit, -notice, 0, notice, limit];
    return html`<svg viewBox="-14 0 428 46" preserveAspectRatio="none" role="img" aria-label=${this.label}>
      ${Array.from({ length: STEPS }, (_, i) => {
        const figure = limit * ((2 * (i + 0.5)) / STEPS - 1);
        const [r, g, b] = stretchColour(figure, limit).map((part) => Math.round(255 * part));
        return svg`<rect x=${(400 * i) / STEPS} y="12" width=${400 / STEPS + 0.5} height="14" fill="rgb(${r} ${g} ${b})" />`;
      })}
      ${ticks.map((figure) => svg`<path class="tick" d="M${x(figure)} 26v5" />`)}
      ${needles.map((figure) => svg`<path class="needle" d="M${x(figure)} 13l-6-11h12z" />`)}
      ${ticks.map((figure) => svg`<text x=${x(figure)} y="45" text-anchor="middle">${formatNumber(Math.abs(figure), Number.isInteger(figure) ? 0 : 1)}</text>`)}
    </svg>`;
  }
}
