import { textWidthMm } from '../../geom/text-width.ts';

/** White that a line may end at: never within `1 1/2 in`, which would be read as 1. */
const BREAKS = /(?!\u00a0(?:\d+\/\d+|in\b))\s+/u;

/** Parts a text into lines no wider than `widthMm`, at spaces where it can, inside a word where it must. At least one character a line. */
export function wrapText(text: string, heightMm: number, widthMm: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(BREAKS).filter((part) => part !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (textWidthMm(longer, heightMm) <= widthMm) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    line = word;
    while (textWidthMm(line, heightMm) > widthMm) {
      const head = headThatFits(line, heightMm, widthMm);
      if (head.length === line.length) break;
      lines.push(head);
      line = line.slice(head.length);
    }
  }
  if (line !== '') lines.push(line);
  return lines;
}

/** The text, or as much of it as fits with an ellipsis after it. */
export function clipText(text: string, heightMm: number, widthMm: number): string {
  if (textWidthMm(text, heightMm) <= widthMm) return text;
  const room = widthMm - textWidthMm('…', heightMm);
  return room <= 0 ? '' : `${headThatFits(text, heightMm, room).trimEnd()}…`;
}

function headThatFits(text: string, heightMm: number, widthMm: number): string {
  let head = '';
  for (const character of text) {
    if (head !== '' && textWidthMm(head + character, heightMm) > widthMm) break;
    head += character;
  }
  return head;
}
