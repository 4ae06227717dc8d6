/**
 * A number as people type it that is no length: `3.5`, `3,5`, `−2`, `12 %`, `30°`. Point and comma both mark decimals, and both in one number are
 * no number.
 * @returns NaN for anything else, an empty text as well.
 */
export function readFigure(text: string): number {
  const plain = text
    .replace(/[\s%°]/g, '')
    .replace(/[\u2212\u2013]/, '-')
    .replace(',', '.');
  return /^[-+]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : NaN;
}
