import { nothing, svg } from 'lit';
import type { Page } from '../model/page.ts';
import type { Words } from '../model/template.ts';
import { drawnLines, type DrawnLines } from '../viewport/drawing-lines.ts';

/** Height of a capital as a share of the type size, for the window's type (measured on its H). */
const CAPITAL_SHARE = 0.67;

/**
 * The very record the PDF is made of, drawn in a picture whose unit is 1 mm; y is turned over here.
 * @param leastMm thinnest line: small pictures stay readable.
 */
export const pageDrawing = ({ drawing, heightMm }: Pick<Page, 'drawing' | 'heightMm'>, leastMm = 0) =>
  svg`<g transform="matrix(1 0 0 -1 0 ${heightMm})">
    ${drawnLines(drawing).map((of) => lines(of, leastMm))}
    ${drawing.words.map(words)}
  </g>`;

function lines({ path, widthMm, dashMm, grey, isFilled }: DrawnLines, leastMm: number) {
  const tone = Math.round(255 * grey);
  const colour = `rgb(${tone} ${tone} ${tone})`;
  return svg`<path d=${path} fill=${isFilled ? colour : 'none'} stroke=${colour} stroke-width=${Math.max(widthMm, leastMm)}
    stroke-dasharray=${dashMm.length === 0 ? nothing : dashMm.join(' ')} stroke-linejoin="round" />`;
}

function words({ text, at, angleRad, heightMm, align, bold, wide = 1 }: Words) {
  const anchor = { left: 'start', centre: 'middle', right: 'end' }[align];
  const angle = (angleRad * 180) / Math.PI;
  return svg`<text transform="translate(${at.x} ${at.y}) rotate(${angle}) scale(${wide} -1)" text-anchor=${anchor}
    font-size=${heightMm / CAPITAL_SHARE} font-weight=${bold === true ? 700 : 400}>${text}</text>`;
}
