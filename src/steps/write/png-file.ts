import { Zlib } from 'fflate';
import { crc32 } from '../../base/crc32.ts';

/** Dots per metre of a picture, as its file says it: a whole number (PNG, third edition, 11.3.4.3), so 300 dpi are 11811 to the metre. */
export const dotsPerMetre = (dpi: number): number => Math.round(dpi / 0.0254);

const SIGNATURE = Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a);

/**
 * A grey picture of 8 bits as PNG, given row by row, so that only its packed form is ever held whole: libraries of the registry want all
 * dots at once, and a sheet of foam at 300 dpi has 280 million.
 */
export class PngFile {
  readonly #chunks: Uint8Array[] = [];
  readonly #zlib: Zlib;
  readonly #widthPx: number;
  #rowsLeft: number;

  constructor(widthPx: number, heightPx: number, perMetre: number) {
    this.#widthPx = widthPx;
    this.#rowsLeft = heightPx;
    this.#chunks.push(SIGNATURE);
    const header = new Uint8Array(13);
    const view = new DataView(header.buffer);
    view.setUint32(0, widthPx);
    view.setUint32(4, heightPx);
    // Depth 8, kind 0 (grey), and the only ways of packing, filtering and no interlacing.
    header.set([8, 0, 0, 0, 0], 8);
    this.#chunk('IHDR', header);
    const size = new Uint8Array(9);
    new DataView(size.buffer).setUint32(0, perMetre);
    new DataView(size.buffer).setUint32(4, perMetre);
    size[8] = 1; // the unit is the metre
    this.#chunk('pHYs', size);
    this.#zlib = new Zlib({ level: 6 }, (packed) => {
      if (packed.length > 0) this.#chunk('IDAT', packed);
    });
  }

  /** @param dots rows of dots from the top, 0 black to 255 white; a whole number of rows. */
  push(dots: Uint8Array): void {
    const rows = dots.length / this.#widthPx;
    const lines = new Uint8Array(rows * (this.#widthPx + 1));
    for (let row = 0; row < rows; row += 1) {
      // Each row begins with its filter: 0, as it is.
      const at = row * this.#widthPx;
      lines.set(dots.subarray(at, at + this.#widthPx), row * (this.#widthPx + 1) + 1);
    }
    this.#rowsLeft -= rows;
    this.#zlib.push(lines, this.#rowsLeft === 0);
  }

  /** The whole file. @throws Error unless all rows were given. */
  end(): Uint8Array {
    if (this.#rowsLeft !== 0) throw new Error(`PNG: ${this.#rowsLeft} rows are missing`);
    this.#chunk('IEND', new Uint8Array(0));
    const file = new Uint8Array(this.#chunks.reduce((sum, { length }) => sum + length, 0));
    let at = 0;
    for (const chunk of this.#chunks) {
      file.set(chunk, at);
      at += chunk.length;
    }
    return file;
  }

  #chunk(kind: string, data: Uint8Array): void {
    const chunk = new Uint8Array(12 + data.length);
    const view = new DataView(chunk.buffer);
    view.setUint32(0, data.length);
    for (let i = 0; i < 4; i += 1) chunk[4 + i] = kind.charCodeAt(i);
    chunk.set(data, 8);
    view.setUint32(8 + data.length, crc32(chunk.subarray(4, 8 + data.length)));
    this.#chunks.push(chunk);
  }
}
