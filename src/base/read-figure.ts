/** Whether thousands are parted in a number, by a mark, a blank or a stroke above: `1,234.5`, `1.234.567`, `1 234,5`, `1’234`. */
export const partsThousands = (text: string): boolean =>
  /\d[.,]\d{3}[.,]\d/.test(text) || /\d[ \u00a0\u202f'\u2019]\d{3}(?![\d/])/.test(text);

/**
 * A number as people type it that is no length: `3.5`, `3,5`, `−2`, `12 %`, `30°`. Point and comma both mark decimals, and both in one number are
 * no number.
 * @returns NaN for anything else, an empty text and a number too large to hold as well.
 */
export function readFigure(text: string): number {
  const plain = text
    .replace(/[\s%°]/g, '')
    .replace(/[\u2212\u2013]/, '-')
    .replace(',', '.');
  const figure = /^[-+]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : NaN;
  return Number.isFinite(figure) ? figure : NaN;
}
