import { parse, type Font } from 'opentype.js/dist/opentype.mjs';

/** Straight parts a curve of a letter is drawn with: at 300 dpi no letter on paper is off by a tenth of a dot. */
const CURVE_PARTS = 5;

/** Letters of a font as closed lines in ems, y up, from the start of the baseline. */
export class FontOutlines {
  readonly #font: Font;
  readonly #letters = new Map<string, readonly Float64Array[]>();

  /** @param bytes of a TrueType file, as the build carries it: a broken one throws. */
  constructor(bytes: Uint8Array) {
    this.#font = parse(bytes.slice().buffer);
  }

  /** Outlines of one letter; a letter the font has not is its empty box. */
  of(letter: string): readonly Float64Array[] {
    const known = this.#letters.get(letter);
    if (known !== undefined) return known;
    const rings = this.#ringsOf(letter);
    this.#letters.set(letter, rings);
    return rings;
  }

  #ringsOf(letter: string): readonly Float64Array[] {
    const { unitsPerEm } = this.#font;
    const rings: number[][] = [];
    let [x, y] = [0, 0];
    const to = (endX: number, endY: number): void => {
      rings.at(-1)?.push(endX / unitsPerEm, endY / unitsPerEm);
      [x, y] = [endX, endY];
    };
    for (const command of this.#font.charToGlyph(letter).path.commands) {
      if (command.type === 'Z') continue;
      if (command.type === 'M') rings.push([]);
      if (command.type === 'Q' || command.type === 'C') {
        const [startX, startY] = [x, y];
        for (let k = 1; k < CURVE_PARTS; k += 1) {
          const t = k / CURVE_PARTS;
          const s = 1 - t;
          if (command.type === 'Q')
            to(
              s * s * startX + 2 * s * t * command.x1 + t * t * command.x,
              s * s * startY + 2 * s * t * command.y1 + t * t * command.y,
            );
          else
            to(
              s ** 3 * startX + 3 * s * s * t * command.x1 + 3 * s * t * t * command.x2 + t ** 3 * command.x,
              s ** 3 * startY + 3 * s * s * t * command.y1 + 3 * s * t * t * command.y2 + t ** 3 * command.y,
            );
        }
      }
      to(command.x, command.y);
    }
    return rings.map((ring) => Float64Array.from(ring));
  }
}
