import { svg, html } from 'lit';
import type { Hatching } from '../model/hatching.ts';

/** Size of a sample, px, and px that stand for 1 mm of paper. */
const SIZE = { width: 34, height: 18 };
const PX_PER_MM = 2.6;

/** A sample of a colour with the lines that stand for it on paper; the base has none. */
export function swatch(rgb: string, hatching: Hatching | null) {
  const { width, height } = SIZE;
  return html`<svg width=${width} height=${height} viewBox="0 0 ${width} ${height}" aria-hidden="true">
    <rect x="0.5" y="0.5" width=${width - 1} height=${height - 1} fill=${rgb} stroke="currentColor"></rect>
    ${(hatching?.anglesDeg ?? []).flatMap((deg) => linesAt(deg, (hatching?.spacingMm ?? 1) * PX_PER_MM, inkOn(rgb)))}
  </svg>`;
}

function linesAt(deg: number, spacing: number, ink: string) {
  const { width, height } = SIZE;
  // y runs down on the screen and up on paper.
  const turn = (-deg * Math.PI) / 180;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const rows = Math.ceil((width + height) / spacing);
  return Array.from({ length: 2 * rows + 1 }, (_, i) => {
    const off = (i - rows + 0.5) * spacing;
    const [x0, y0] = [width / 2 - off * s, height / 2 + off * c];
    return clipped(x0, y0, c, s, ink);
  });
}

/** The part of a line inside the sample. */
function clipped(x0: number, y0: number, c: number, s: number, ink: string) {
  let [from, to] = [-Infinity, Infinity];
  for (const [at, way, most] of [
    [x0, c, SIZE.width],
    [y0, s, SIZE.height],
  ]) {
    if (Math.abs(way) < 1e-9) {
      if (at < 0 || at > most) return svg``;
      continue;
    }
    from = Math.max(from, Math.min(-at / way, (most - at) / way));
    to = Math.min(to, Math.max(-at / way, (most - at) / way));
  }
  if (!(to > from)) return svg``;
  return svg`<line x1=${x0 + from * c} y1=${y0 + from * s} x2=${x0 + to * c} y2=${y0 + to * s} stroke=${ink} stroke-width="1.2"></line>`;
}

/** Dark lines on light colours, light ones on dark. */
function inkOn(rgb: string): string {
  const [r, g, b] = [1, 3, 5].map((i) => Number.parseInt(rgb.slice(i, i + 2), 16));
  return 0.3 * r + 0.59 * g + 0.11 * b > 110 ? '#1b1b1d' : '#f4f0e6';
}
