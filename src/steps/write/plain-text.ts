/**
 * Words as a file may hold them: characters that are no text (controls, ends of lines, what turns text about, halves of pairs) become spaces, those beyond the font's first
 * plane an empty box. A name that came out of someone's model may hold anything.
 */
export function plainText(text: string): string {
  let plain = '';
  for (const character of text) {
    const code = character.codePointAt(0) ?? 0;
    if (code > 0xffff) plain += EMPTY_BOX;
    else plain += isControl(code) || isHalf(code) || code >= 0xfffe ? ' ' : character;
  }
  return plain;
}

/** A white square: DejaVu Sans has it. */
const EMPTY_BOX = '\u25a1';

const isControl = (code: number): boolean =>
  code < 0x20 ||
  (code >= 0x7f && code <= 0x9f) ||
  (code >= 0x2028 && code <= 0x202e) ||
  (code >= 0x2066 && code <= 0x2069);
const isHalf = (code: number): boolean => code >= 0xd800 && code <= 0xdfff;
