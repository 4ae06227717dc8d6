import { LitElement, css, html, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Words } from '../model/template.ts';
import { drawnLines, type DrawnLines } from '../viewport/drawing-lines.ts';
import type { StepPicture } from '../worker/shop-api.ts';
import { SHARED } from './styles.ts';

/** Height of a capital as a share of the type size, for the window's type (measured on its H). */
const CAPITAL_SHARE = 0.67;

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
    const { drawing, widthMm, heightMm } = this.drawn;
    return html`<svg viewBox="-2 -2 ${widthMm + 4} ${heightMm + 4}" role="img" aria-label=${this.label}>
      <g transform="matrix(1 0 0 -1 0 ${heightMm})">${drawnLines(drawing).map(lines)} ${drawing.words.map(words)}</g>
    </svg>`;
  }
}

function lines({ path, widthMm, dashMm, grey, isFilled }: DrawnLines) {
  const tone = Math.round(255 * grey);
  const colour = `rgb(${tone} ${tone} ${tone})`;
  return svg`<path d=${path} fill=${isFilled ? colour : 'none'} stroke=${colour} stroke-width=${widthMm}
    stroke-dasharray=${dashMm.length === 0 ? nothing : dashMm.join(' ')} stroke-linejoin="round" />`;
}

function words({ text, at, angleRad, heightMm, align, bold }: Words) {
  const anchor = { left: 'start', centre: 'middle', right: 'end' }[align];
  const angle = (angleRad * 180) / Math.PI;
  return svg`<text transform="translate(${at.x} ${at.y}) rotate(${angle}) scale(1 -1)" text-anchor=${anchor}
    font-size=${heightMm / CAPITAL_SHARE} font-weight=${bold === true ? 700 : 400}>${text}</text>`;
}
