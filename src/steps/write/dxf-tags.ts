/** Decimals of a coordinate: a hundredth of a micrometre. */
const DECIMALS = 5;

/**
 * Lines of a DXF file as pairs of group code and value (Autodesk, DXF Reference, release 12). Written here and not by a library: those of the
 * registry write release 2007 alone, with polylines older readers do not know, blocks without content, and handles that count on from one
 * file to the next, so that the same project would not give the same bytes.
 */
export class DxfTags {
  readonly #lines: string[] = [];

  /** A word, name or whole number. */
  tag(code: number, value: string | number): this {
    this.#lines.push(String(code).padStart(3), String(value));
    return this;
  }

  /** A length or angle: always with a decimal point, never with an exponent or a minus nought. */
  real(code: number, value: number): this {
    if (!Number.isFinite(value)) throw new RangeError(`DXF: ${value} under group ${code}`);
    const text = value.toFixed(DECIMALS);
    return this.tag(code, Number(text) === 0 ? text.replace('-', '') : text);
  }

  /** A point in the plane, from the group code of its x on. */
  point(x: number, y: number, code = 10): this {
    return this.real(code, x)
      .real(code + 10, y)
      .real(code + 20, 0);
  }

  section(name: string, fill: () => void): this {
    this.tag(0, 'SECTION').tag(2, name);
    fill();
    return this.tag(0, 'ENDSEC');
  }

  table(name: string, count: number, fill: () => void): this {
    this.tag(0, 'TABLE').tag(2, name).tag(70, count);
    fill();
    return this.tag(0, 'ENDTAB');
  }

  /** Ends of lines as the format's home wrote them. */
  text(): string {
    return `${this.#lines.join('\r\n')}\r\n`;
  }
}

/**
 * Words as a DXF of release 12 may hold them: plain ASCII, all else as `\U+XXXX`, which later readers set as the letter; the signs that
 * would start a code (two per cent signs, a caret) taken apart.
 */
export function dxfText(plain: string): string {
  const apart = plain.replace(/%(?=%)/g, '% ').replace(/\^/g, '^ ');
  return apart.replace(
    /[^\x20-\x7e]/g,
    (letter) => `\\U+${letter.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`,
  );
}

/** Longest name of a block or layer in release 12. */
const LONGEST_NAME = 31;

/** A name for a block: capitals, digits, hyphens and low lines (release 12 knows no others), not longer than it may be. @param end kept whole. */
export function dxfName(words: string, end = ''): string {
  const plain = words
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toUpperCase()
    .replace(/[^A-Z0-9_]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return `${plain.slice(0, LONGEST_NAME - end.length).replace(/-+$/, '')}${end}`;
}
