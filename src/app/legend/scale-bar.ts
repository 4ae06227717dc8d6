import { LitElement, css, html, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { stretchColour } from '../../viewport/stretch-colours.ts';
import { SHARED } from '../styles.ts';

/** Width of the drawing, what is beside it on both sides, and fields of one colour on it. */
const WIDTH = 400;
const BESIDE = 14;
const STEPS = 41;

/** The scale of a figure that is coloured on the bench: less than nothing at one end, more at the other, with needles at the figures read. */
@customElement('fl-scale-bar')
export class ScaleBar extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
        direction: ltr;
      }
      svg {
        display: block;
        inline-size: 100%;
        block-size: 30px;
        overflow: visible;
      }
      /* Beside the drawing, which is as wide as there is room: figures keep their shape. */
      .figures {
        block-size: 1.3em;
        font-size: var(--t-small);
        fill: var(--ink);
      }
      .ends {
        display: flex;
        justify-content: space-between;
        gap: var(--s3);
        font-size: var(--t-small);
        color: var(--ink-soft);
        line-height: 1.2;
      }
      .frame {
        fill: none;
        stroke: var(--ink);
      }
      .tick {
        stroke: var(--ink);
      }
      .needle {
        fill: var(--ink);
        stroke: var(--paper-high);
      }
    `,
  ];

  /** What the scale says, for those who do not see it. */
  @property() label = '';
  /** Words for both ends. */
  @property({ attribute: false }) ends: readonly [string, string] = ['', ''];
  /** Figure at the ends, > 0: beyond it the end's colour is kept. */
  @property({ type: Number }) limit = 1;
  /** Figure from which it is told of; its ticks stand on both sides. */
  @property({ type: Number }) notice = 0.5;
  /** True where there is nothing under 0: the scale begins there. */
  @property({ type: Boolean }) isOneSided = false;
  /** Figures read. */
  @property({ attribute: false }) needles: readonly number[] = [];
  /** A figure of a tick as text. */
  @property({ attribute: false }) figure: (figure: number) => string = String;

  protected override render() {
    const { limit, notice, needles, isOneSided } = this;
    const from = isOneSided ? 0 : -limit;
    const x = (figure: number): number => (WIDTH * (Math.max(from, Math.min(limit, figure)) - from)) / (limit - from);
    const ticks = isOneSided ? [0, notice, limit] : [-limit, -notice, 0, notice, limit];
    const share = (figure: number): number => (x(figure) + BESIDE) / (WIDTH + 2 * BESIDE);
    return html`<svg
        viewBox="${-BESIDE} 0 ${WIDTH + 2 * BESIDE} 30"
        preserveAspectRatio="none"
        role="img"
        aria-label=${this.label}
      >
        ${Array.from({ length: STEPS }, (_, i) => {
          const figure = from + ((limit - from) * (i + 0.5)) / STEPS;
          const [r, g, b] = stretchColour(figure, limit).map((part) => Math.round(255 * part));
          return svg`<rect x=${(WIDTH * i) / STEPS} y="11" width=${WIDTH / STEPS + 0.5} height="14" fill="rgb(${r} ${g} ${b})" />`;
        })}
        <rect class="frame" x="0" y="11" width=${WIDTH} height="14" />
        ${ticks.map((figure) => svg`<path class="tick" d="M${x(figure)} 25v5" />`)}
        ${needles.map((figure) => svg`<path class="needle" d="M${x(figure)} 13l-6-12h12z" />`)}
      </svg>
      <svg class="figures" aria-hidden="true">
        ${ticks.map((figure) => svg`<text x="${100 * share(figure)}%" y="1em" text-anchor="middle">${this.figure(Math.abs(figure))}</text>`)}
      </svg>
      <div class="ends" aria-hidden="true"><span>${this.ends[0]}</span><span>${this.ends[1]}</span></div>`;
  }
}
