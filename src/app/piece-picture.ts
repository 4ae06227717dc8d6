import { LitElement, css, html, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Template } from '../model/template.ts';
import { drawnLines } from '../viewport/drawing-lines.ts';
import { SHARED } from './styles.ts';

/** A piece as it is cut, small: foam on the bench seen from above. */
@customElement('fl-piece-picture')
export class PiecePicture extends LitElement {
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
      }
      .cut {
        fill: var(--foam);
        stroke: var(--foam);
      }
      .fold {
        fill: none;
        stroke: var(--paper);
      }
    `,
  ];

  @property({ attribute: false }) template: Template | null = null;
  /** Width of a line, share of the picture's larger side. */
  @property({ type: Number }) line = 0.015;

  protected override render() {
    const { template } = this;
    if (template === null) return nothing;
    const { minX, minY, maxX, maxY } = template.foamBox;
    const lines = drawnLines(template.drawing);
    const pen = this.line * Math.max(maxX - minX, maxY - minY);
    const folds = lines.filter(({ role }) => role === 'fold-in' || role === 'fold-out');
    return html`<svg viewBox="${minX} ${-maxY} ${maxX - minX} ${maxY - minY}" aria-hidden="true">
      <g transform="scale(1 -1)">
        ${lines
          .filter(({ role }) => role === 'cut')
          .map(({ path }) => svg`<path class="cut" d=${path} fill-rule="evenodd" stroke-width=${pen / 2} />`)}
        ${folds.map(({ path }) => svg`<path class="fold" d=${path} stroke-width=${pen} stroke-dasharray="${2 * pen} ${pen}" />`)}
      </g>
    </svg>`;
  }
}
