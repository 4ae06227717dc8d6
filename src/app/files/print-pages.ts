import { html, render } from 'lit';
import type { Page } from '../../model/page.ts';
import { pageDrawing } from '../page-drawing.ts';

/** What is printed lies in the document only while the browser's own dialogue is open. */
const HOST = 'fl-print';

/**
 * Opens the browser's dialogue for printing with these pages, in their true size: the paper's size goes with them as CSS (`@page`, CSS Paged
 * Media), without margins, so that 100 % is the true scale. A PDF in a frame would be shrunk to the printer's margins by most dialogues.
 */
export async function printPages(pages: readonly Page[]): Promise<void> {
  const takeAway = layOutForPrint(pages);
  window.addEventListener('afterprint', takeAway, { once: true });
  // Type must be there before the pages are taken.
  await document.fonts.ready;
  window.print();
}

/** Puts pages into the document, seen on paper alone. @returns what takes them away again. */
export function layOutForPrint(pages: readonly Page[]): () => void {
  const host = document.createElement('div');
  host.className = HOST;
  host.setAttribute('aria-hidden', 'true');
  const sheet = new CSSStyleSheet();
  const sizes = [...new Set(pages.map(sizeOf))];
  sheet.replaceSync(styleOf(sizes));
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
  render(
    pages.map(
      (page) =>
        html`<div class="page size-${sizes.indexOf(sizeOf(page))}">
          <svg width="${page.widthMm}mm" height="${page.heightMm}mm" viewBox="0 0 ${page.widthMm} ${page.heightMm}">
            ${pageDrawing(page)}
          </svg>
        </div>`,
    ),
    host,
  );
  document.body.append(host);
  return () => {
    host.remove();
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== sheet);
  };
}

const sizeOf = ({ widthMm, heightMm }: Page): string => `${widthMm}mm ${heightMm}mm`;

/** Each size of paper is a named page; what else the document holds is not printed. */
const styleOf = (sizes: readonly string[]): string => `
  .${HOST} { display: none; }
  @media print {
    html, body { margin: 0; padding: 0; block-size: auto; overflow: visible; background: none; }
    body > *:not(.${HOST}) { display: none !important; }
    .${HOST} { display: block; }
    .${HOST} .page { overflow: clip; break-after: page; break-inside: avoid; line-height: 0; }
    .${HOST} .page:last-child { break-after: auto; }
    .${HOST} svg { display: block; }
    .${HOST} text { fill: #000; font-family: var(--type); }
    ${sizes
      .map((size, i) => {
        const [width, height] = size.split(' ');
        return `@page size-${i} { size: ${size}; margin: 0; }
    .${HOST} .size-${i} { page: size-${i}; inline-size: ${width}; block-size: ${height}; }`;
      })
      .join('\n')}
  }
`;
