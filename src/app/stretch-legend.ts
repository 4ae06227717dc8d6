import { LitElement, css, html, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatPercent } from '../base/format-length.ts';
import './field-scale.ts';
import { SHARED } from './styles.ts';
import type { Reading } from './view-state.ts';
import { WORDS } from './words.ts';

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
    return html`<fl-field-scale
        label=${WORDS.fit.legend(limitPct)}
        .limit=${limitPct}
        .notice=${noticePct}
        .needles=${reading === null ? [] : [-reading.squashPct, reading.stretchPct]}
      ></fl-field-scale>
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
