import { LitElement, css, html, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { SideLine } from '../model/build-up.ts';
import { BUILD_UP_WORDS } from './build-up-words.ts';
import { DRAWING_STYLE } from './fields-style.ts';
import { SHARED } from './styles.ts';

/** Free round the drawing, of its length. */
const MARGIN = 0.01;

/** A core with all that is built up on it, cut along its axis, its start on the left. */
@customElement('fl-core-side')
export class CoreSide extends LitElement {
  static override styles = [
    SHARED,
    DRAWING_STYLE,
    css`
      path {
        fill: none;
        stroke: var(--ink);
        stroke-width: 1px;
        vector-effect: non-scaling-stroke;
      }
      .layer,
      .skin,
      .stave,
      .cap {
        fill: var(--foam);
        stroke: var(--on-foam);
      }
      .core {
        fill: var(--paper-high);
      }
      .profile {
        stroke-width: 2.5px;
      }
      .seat,
      .winding {
        stroke: var(--ink-soft);
        stroke-dasharray: 5 3;
      }
    `,
  ];

  @property({ attribute: false }) lines: readonly SideLine[] = [];
  /** What the core is called. */
  @property() core = '';

  protected override render() {
    const points = this.lines.flatMap((line) => line.points);
    if (points.length === 0) return nothing;
    const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
    const [minX, maxX, minY, maxY] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
    const free = MARGIN * (maxX - minX);
    const box = [minX - free, -maxY - free, maxX - minX + 2 * free, maxY - minY + 2 * free];
    const layers = this.lines.filter(({ role }) => role === 'layer');
    const numbers = new Set(layers.flatMap(({ text }) => text ?? []));
    return html`<svg viewBox=${box.join(' ')} role="img" aria-label=${BUILD_UP_WORDS.side(this.core, numbers.size)}>
        ${this.lines.map(
          ({ role, points: own, closed }) =>
            svg`<path class=${role} d=${`M${own.map(([x, y]) => `${x} ${-y}`).join('L')}${closed ? 'Z' : ''}`} />`,
        )}
      </svg>
      <p class="small soft">${BUILD_UP_WORDS.sideWords}</p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'fl-core-side': CoreSide;
  }
}
