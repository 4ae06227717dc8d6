import { LitElement, css, html, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatNumber, formatPercent } from '../base/format-length.ts';
import { stretchColour } from '../viewport/stretch-colours.ts';
import { SHARED } from './styles.ts';
import type { Reading } from './view-state.ts';
import { WORDS } from './words.ts';

const STEPS = 41;

/** Strokes as they are drawn on the foam. */
const STROKES = [
  ['whole', 'M1 6h24'],
  ['broken', 'M1 6h9M16 6h9'],
] as const;

/** The scale of stretch and squash: the same colours as on the stage, ends at the foam's limit, the number under the pointer on it. */
@customElement('fl-stretch-legend')
export class StretchLegend extends LitElement {
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
      svg.stroke {
        display: inline-block;
        inline-size: 26px;
        block-size: 12px;
        vertical-align: -1px;
      }
      .stroke path {
        stroke: var(--ink);
        stroke-width: 1.6;
      }
      .strokes {
        display: flex;
        flex-wrap: wrap;
        gap: 0 var(--s4);
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

  /** Per cent at both ends: from here on it is too much. */
  @property({ type: Number }) limitPct = 8;
  /** Per cent from which the scale's ticks warn. */
  @property({ type: Number }) noticePct = 3;
  /** Values under the pointer, or null. */
  @property({ attribute: false }) reading: Reading | null = null;

  protected override render() {
    const { limitPct, noticePct, reading } = this;
    const x = (pct: number): number => 200 + (200 * Math.max(-limitPct, Math.min(limitPct, pct))) / limitPct;
    const ticks = [-limitPct, -noticePct, 0, noticePct, limitPct];
    return html`<svg
        viewBox="-14 0 428 46"
        preserveAspectRatio="none"
        role="img"
        aria-label=${WORDS.fit.legend(limitPct)}
      >
        ${Array.from({ length: STEPS }, (_, i) => {
          const pct = limitPct * ((2 * (i + 0.5)) / STEPS - 1);
          const [r, g, b] = stretchColour(pct, limitPct).map((part) => Math.round(255 * part));
          return svg`<rect x=${(400 * i) / STEPS} y="12" width=${400 / STEPS + 0.5} height="14" fill="rgb(${r} ${g} ${b})" />`;
        })}
        ${ticks.map((pct) => svg`<path class="tick" d="M${x(pct)} 26v5" />`)}
        ${reading === null ? nothing : [-reading.squashPct, reading.stretchPct].map((pct) => svg`<path class="needle" d="M${x(pct)} 13l-6-11h12z" />`)}
        ${ticks.map((pct) => svg`<text x=${x(pct)} y="45" text-anchor="middle">${formatNumber(Math.abs(pct), Number.isInteger(pct) ? 0 : 1)}</text>`)}
      </svg>
      <p class="small">
        ${reading === null ? WORDS.fit.legendHint : WORDS.fit.reading(formatPercent(reading.squashPct), formatPercent(reading.stretchPct))}
      </p>
      <p class="small strokes">
        ${STROKES.map(
          ([name, path]) =>
            html`<span>
              <svg class="stroke" viewBox="0 0 26 12" aria-hidden="true">${svg`<path d=${path} />`}</svg>
              ${WORDS.forming.legend[name]}
            </span>`,
        )}
      </p>`;
  }
}
