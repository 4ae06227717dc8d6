import { LitElement, css, html, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatLength, type LengthUnit } from '../base/format-length.ts';
import { drawnLines } from '../viewport/drawing-lines.ts';
import type { TriedPiece } from '../worker/parts-api.ts';
import { DRAWING_STYLE } from './fields-style.ts';
import { PART_WORDS } from './part-words.ts';
import { ringPath } from './sheet-drawing.ts';
import { SHARED } from './styles.ts';
import { laidInRows, type LaidPiece } from './tried-rows.ts';

/** Flat pieces of a shape beside each other, all to one scale, as they are cut. */
@customElement('fl-shape-picture')
export class ShapePicture extends LitElement {
  static override styles = [
    SHARED,
    DRAWING_STYLE,
    css`
      .foam {
        fill: var(--foam);
      }
      .line {
        fill: none;
        stroke: var(--on-foam);
        stroke-width: 1px;
        vector-effect: non-scaling-stroke;
      }
      .fold-in,
      .fold-out {
        stroke-dasharray: 5 3;
      }
      text {
        fill: var(--ink);
        font-family: var(--type);
        font-weight: 600;
        text-anchor: middle;
      }
      .is-stale {
        opacity: 0.55;
      }
    `,
  ];

  @property({ attribute: false }) pieces: readonly TriedPiece[] = [];
  @property() unit: LengthUnit = 'mm';
  /** True while another picture is being made. */
  @property({ type: Boolean }) stale = false;

  protected override render() {
    if (this.pieces.length === 0) return nothing;
    const { laid, width, height, textMm } = laidInRows(this.pieces);
    return html`<svg
      viewBox="0 0 ${width} ${height}"
      role="img"
      class=${this.stale ? 'is-stale' : ''}
      aria-label=${PART_WORDS.shapes.picture(laid.map((one) => this.#named(one)).join('; '))}
    >
      ${laid.map((one) => this.#piece(one, textMm))}
    </svg>`;
  }

  #named({ piece, box }: LaidPiece): string {
    const [x, y] = [box.maxX - box.minX, box.maxY - box.minY].map((mm) => formatLength(mm, this.unit));
    return PART_WORDS.shapes.size(PART_WORDS.shapes.times(piece.quantity, piece.name), x, y);
  }

  #piece({ piece, box, x, y }: LaidPiece, textMm: number) {
    const [wide, high] = [box.maxX - box.minX, box.maxY - box.minY];
    return svg`<g transform="translate(${x} ${y})">
      <g transform="translate(${-box.minX} ${box.maxY}) scale(1 -1)">
        <path class="foam" d=${piece.rings.map(ringPath).join('')} fill-rule="evenodd" />
        ${drawnLines({ strokes: piece.lines, words: [] }).map(
          ({ role, path }) => svg`<path class="line ${role}" d=${path} />`,
        )}
      </g>
      <text x=${wide / 2} y=${high + 1.15 * textMm} font-size=${textMm}>${PART_WORDS.shapes.times(piece.quantity, piece.name)}</text>
    </g>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'fl-shape-picture': ShapePicture;
  }
}
