import { LitElement, css, html, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { FoamPiece } from '../../model/foam-piece.ts';
import type { LineRole, Template } from '../../model/template.ts';
import { drawnLines } from '../../viewport/drawing-lines.ts';
import { SHARED } from '../styles.ts';
import { edgeLabels } from './edge-labels.ts';

/** Height of a letter and how far inside its edge it stands, share of the picture's mean side. */
const LETTER_SHARE = 0.13;
const INSIDE_SHARE = 0.11;

/** A piece as it is cut, as large as there is room: foam with its marks, folds and the letters of its seams. */
@customElement('fl-work-picture')
export class WorkPicture extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
        min-block-size: 0;
      }
      svg {
        display: block;
        inline-size: 100%;
        block-size: 100%;
        overflow: visible;
      }
      path {
        fill: none;
        vector-effect: non-scaling-stroke;
      }
      .cut {
        fill: var(--foam);
        stroke: var(--ink);
        stroke-width: 3px;
      }
      .bevel {
        stroke: var(--foam-cut);
        stroke-width: 2px;
      }
      .line {
        stroke: var(--on-foam);
        stroke-width: 2px;
        stroke-dasharray: 12 6;
      }
      /* Ticks stand beside the foam, arrows on it. */
      .mark {
        stroke: var(--ink);
        stroke-width: 4px;
      }
      [clip-path] .mark {
        stroke: var(--on-foam);
      }
      text {
        fill: var(--on-foam);
        stroke: var(--foam);
        stroke-width: 0.16em;
        paint-order: stroke;
        font-family: var(--type);
        font-weight: 700;
        text-anchor: middle;
        dominant-baseline: central;
      }
      @media (forced-colors: active) {
        .cut {
          fill: Canvas;
          stroke: CanvasText;
        }
        .bevel,
        .line,
        .mark,
        [clip-path] .mark {
          stroke: CanvasText;
        }
        text {
          fill: CanvasText;
          stroke: Canvas;
        }
      }
    `,
  ];

  @property({ attribute: false }) template: Template | null = null;
  /** Whose edges have letters; null for what has none. */
  @property({ attribute: false }) piece: FoamPiece | null = null;
  /** What it shows, for those who do not see it. */
  @property() label = '';

  protected override render() {
    const { template, piece } = this;
    if (template === null) return nothing;
    const { minX, minY, maxX, maxY } = template.foamBox;
    const [width, height] = [maxX - minX, maxY - minY];
    const side = Math.sqrt(width * height);
    const edge = 0.03 * side;
    const view = [minX - edge, -maxY - edge, width + 2 * edge, height + 2 * edge].join(' ');
    const labels = piece === null ? [] : edgeLabels(piece, INSIDE_SHARE * side, template.reversed);
    const lines = drawnLines(template.drawing);
    const drawn = (kind: string, roles: readonly LineRole[]) =>
      lines
        .filter(({ role }) => roles.includes(role))
        .map(({ path }) => svg`<path class=${kind} d=${path} fill-rule="evenodd" />`);
    const marks = drawn('mark', MARKS);
    return html`<svg viewBox=${view} role="img" aria-label=${this.label}>
      <clipPath id="foam">
        ${lines.filter(({ role }) => role === 'cut').map(({ path }) => svg`<path d=${path} clip-rule="evenodd" />`)}
      </clipPath>
      <g transform="scale(1 -1)">
        ${marks} ${drawn('cut', ['cut'])} ${drawn('bevel', ['bevel'])} ${drawn('line', LINES)}
        <g clip-path="url(#foam)">${marks}</g>
      </g>
      ${labels.map(({ letter, x, y }) => svg`<text x=${x} y=${-y} font-size=${LETTER_SHARE * side}>${letter}</text>`)}
    </svg>`;
  }
}

const LINES: readonly LineRole[] = ['fold-in', 'fold-out', 'kerf', 'score', 'placement', 'engrave'];
const MARKS: readonly LineRole[] = ['mark', 'hole'];
