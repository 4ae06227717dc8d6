import { LitElement, css, html, nothing, svg, type PropertyValues } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { formatLength, type LengthUnit } from '../base/format-length.ts';
import type { SculptView } from '../model/bench-view.ts';
import { FAMILIAR_OUTLINES } from '../viewport/familiar-outlines.ts';
import { colourOf } from './colour-of.ts';
import { MOST_TRIANGLES, drawElevation, elevationSize } from './elevation-drawing.ts';
import { SHARED } from './styles.ts';
import { WORDS } from './words.ts';

type Familiar = 'hand' | 'head' | 'door';

/** What people call these things: round sizes; the outlines keep to them. */
const NOMINAL_MM: Readonly<Record<Familiar, number>> = { hand: 200, head: 230, door: 2000 };

/** Extent of each outline, mm. */
const EXTENT: Readonly<Record<Familiar, { readonly heightMm: number; readonly widthMm: number }>> = {
  hand: extentOf('hand'),
  head: extentOf('head'),
  door: extentOf('door'),
};

const HEIGHT_PX = 190;
const ROOM = { left: 58, top: 8, bottom: 32, between: 34 };

/** The sculpt from the front with its dimensions, beside something everybody has held. */
@customElement('fl-elevation')
export class ElevationPicture extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
        overflow: hidden;
      }
      .plot {
        position: relative;
        block-size: ${HEIGHT_PX}px;
      }
      canvas,
      svg {
        position: absolute;
        inset: 0;
        inline-size: 100%;
        block-size: 100%;
      }
      svg {
        overflow: visible;
      }
      .shape .full {
        fill: var(--rule);
      }
      .shape .line {
        fill: var(--paper);
      }
      .dimension {
        stroke: var(--ink);
        stroke-width: 1;
        fill: none;
      }
      .box {
        stroke: var(--ink);
        fill: var(--paper-low);
      }
      text {
        font-size: 0.8333rem;
        fill: var(--ink);
        font-variant-numeric: tabular-nums;
      }
      text.soft {
        fill: var(--ink-soft);
      }
    `,
  ];

  @property({ attribute: false }) sculpt: SculptView | null = null;
  @property() up: 'x' | 'y' | 'z' = 'y';
  @property() unit: LengthUnit = 'mm';
  /** Light or dark, so that the drawing is made anew when it changes. */
  @property() theme = '';
  /** Width there is, px. */
  @state() private room = 0;
  @query('canvas') private canvas!: HTMLCanvasElement;

  // In a frame of its own: a drawing that changes the sheet's height while sizes are told would be told again.
  #sizes = new ResizeObserver(([entry]) =>
    requestAnimationFrame(() => (this.room = Math.round(entry.contentRect.width))),
  );

  override connectedCallback(): void {
    super.connectedCallback();
    this.#sizes.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#sizes.disconnect();
  }

  protected override render() {
    const { sculpt } = this;
    if (sculpt === null || !sculpt.sized || this.room === 0) return nothing;
    const plan = this.#plan(sculpt);
    const { size, familiar, scale } = plan;
    const { x, top, width, height, familiarX } = plan;
    const base = HEIGHT_PX - ROOM.bottom;
    return html`<div class="plot">
      <canvas></canvas>
      <svg role="img" aria-label=${WORDS.size.picture(WORDS.size.familiar[familiar])}>
        ${plan.isTooLarge ? svg`<rect class="box" x=${x} y=${top} width=${width} height=${height} />` : nothing}
        <g
          class="shape"
          transform="translate(${familiarX + (EXTENT[familiar].widthMm * scale) / 2} ${base}) scale(${scale} ${-scale})"
        >
          ${FAMILIAR_OUTLINES[familiar].map((ring, i) => svg`<path class=${i === 0 ? 'full' : 'line'} d=${pathOf(ring)} />`)}
        </g>
        <path class="dimension" d="M${x - 14} ${top}h10M${x - 14} ${base}h10M${x - 9} ${top}V${base}" />
        <text x=${x - 18} y=${(top + base) / 2 + 5} text-anchor="end">${formatLength(size.heightMm, this.unit)}</text>
        <path class="dimension" d="M${x} ${base + 4}v10M${x + width} ${base + 4}v10M${x} ${base + 9}h${width}" />
        <text x=${x + width / 2} y=${base + 29} text-anchor="middle">${formatLength(size.widthMm, this.unit)}</text>
        <text class="soft" x=${familiarX + (EXTENT[familiar].widthMm * scale) / 2} y=${base + 29} text-anchor="middle">
          ${WORDS.size.familiarShort[familiar](formatLength(NOMINAL_MM[familiar], this.unit))}
        </text>
      </svg>
    </div>`;
  }

  protected override updated(_changed: PropertyValues): void {
    const { sculpt } = this;
    if (sculpt === null || !sculpt.sized || this.room === 0) return;
    const pen = this.canvas.getContext('2d');
    if (pen === null) return;
    const ratio = window.devicePixelRatio;
    this.canvas.width = Math.round(this.room * ratio);
    this.canvas.height = Math.round(HEIGHT_PX * ratio);
    const plan = this.#plan(sculpt);
    const style = getComputedStyle(this);
    pen.setTransform(ratio, 0, 0, ratio, ratio * plan.x, ratio * plan.top);
    drawElevation(
      pen,
      sculpt,
      this.up,
      plan.scale,
      style.color,
      colourOf(this, '--paper-high'),
      this.theme.startsWith('dark'),
    );
  }

  #plan(sculpt: SculptView) {
    const size = elevationSize(sculpt, this.up);
    const longest = Math.max(size.widthMm, size.heightMm);
    const familiar: Familiar = longest > 1100 ? 'door' : longest > 240 ? 'head' : 'hand';
    const { heightMm, widthMm } = EXTENT[familiar];
    const room = this.room - ROOM.left - ROOM.between - 40;
    const scale = Math.min(
      (HEIGHT_PX - ROOM.top - ROOM.bottom) / Math.max(size.heightMm, heightMm),
      room / (size.widthMm + widthMm),
    );
    const height = size.heightMm * scale;
    const width = size.widthMm * scale;
    const top = HEIGHT_PX - ROOM.bottom - height;
    const x = ROOM.left + 18;
    return {
      size,
      familiar,
      scale,
      x,
      top,
      width,
      height,
      familiarX: x + width + ROOM.between,
      isTooLarge: sculpt.triangles.length / 3 > MOST_TRIANGLES,
    };
  }
}

function extentOf(familiar: Familiar): { heightMm: number; widthMm: number } {
  const [ring] = FAMILIAR_OUTLINES[familiar];
  const xs = ring.map(([x]) => x);
  return { heightMm: Math.max(...ring.map(([, y]) => y)), widthMm: 2 * Math.max(...xs.map(Math.abs)) };
}

const pathOf = (ring: readonly (readonly [number, number])[]): string =>
  `M${ring.map(([x, y]) => `${x} ${y}`).join('L')}Z`;
