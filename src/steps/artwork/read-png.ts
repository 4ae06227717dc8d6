import { Unzlib } from 'fflate';
import { crc32 } from '../../base/crc32.ts';
import { ok, type Fail, type Result } from '../../base/result.ts';
import type { Bitmap, PictureDensity, PictureLight } from '../../model/bitmap.ts';
import { brokenPicture, cutOffPicture, sizeFault, unreadKind } from './picture-faults.ts';
import { greyMaker } from './picture-grey.ts';

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

export const isPng = (bytes: Uint8Array): boolean => SIGNATURE.every((value, i) => bytes[i] === value);

/** Channels of each type of colour, and the depths it may have (PNG, third edition, table 7). */
const COLOUR_TYPES: Readonly<Record<number, { channels: number; depths: readonly number[] }>> = {
  0: { channels: 1, depths: [1, 2, 4, 8, 16] },
  2: { channels: 3, depths: [8, 16] },
  3: { channels: 1, depths: [1, 2, 4, 8] },
  4: { channels: 2, depths: [8, 16] },
  6: { channels: 4, depths: [8, 16] },
};

/** Steps of interlacing: first column and row, and every how many (PNG, chapter 8.2). */
const ADAM7 = [
  [0, 0, 8, 8],
  [4, 0, 8, 8],
  [0, 4, 4, 8],
  [2, 0, 4, 4],
  [0, 2, 2, 4],
  [1, 0, 2, 2],
  [0, 1, 1, 2],
] as const;
const AT_ONCE = [[0, 0, 1, 1]] as const;

interface Chunks {
  readonly width: number;
  readonly height: number;
  readonly depth: number;
  readonly colourType: number;
  readonly channels: number;
  readonly isInterlaced: boolean;
  readonly palette: Uint8Array;
  readonly see: Uint8Array;
  readonly data: readonly Uint8Array[];
  readonly density: PictureDensity | null;
}

/**
 * Reads a PNG file (W3C PNG, third edition) of any colour type, depth and interlace in grey. Colour profiles and gamma are not taken into account.
 * What it inflates to is bounded by the size it says.
 * @returns fails with `artwork/picture-…`.
 */
export function readPng(bytes: Uint8Array, light: PictureLight): Result<Bitmap> {
  const chunks = readChunks(bytes);
  if (!chunks.ok) return chunks;
  const { width, height, depth, channels, isInterlaced, density } = chunks.value;
  const passes = (isInterlaced ? ADAM7 : AT_ONCE).map(([x, y, stepX, stepY]) => {
    const columns = Math.max(0, Math.ceil((width - x) / stepX));
    const rows = columns === 0 ? 0 : Math.max(0, Math.ceil((height - y) / stepY));
    return { x, y, stepX, stepY, columns, rows, rowBytes: Math.ceil((columns * channels * depth) / 8) };
  });
  const total = passes.reduce((sum, { rows, rowBytes }) => sum + rows * (rowBytes + 1), 0);
  const raw = inflated(chunks.value.data, total);
  if (!raw.ok) return raw;
  const grey = new Float32Array(width * height);
  const put = pixelReader(chunks.value, light);
  let at = 0;
  for (const { x, y, stepX, stepY, columns, rows, rowBytes } of passes) {
    let before: Uint8Array = new Uint8Array(rowBytes);
    for (let row = 0; row < rows; row += 1) {
      const line = raw.value.subarray(at + 1, at + 1 + rowBytes);
      if (!unfilter(raw.value[at], line, before, Math.max(1, (channels * depth) >> 3)))
        return brokenPicture('a row is packed in no known way');
      at += rowBytes + 1;
      const base = (y + row * stepY) * width + x;
      for (let column = 0; column < columns; column += 1) {
        const value = put(line, column);
        if (Number.isNaN(value)) return brokenPicture('a colour is missing from its palette');
        grey[base + column * stepX] = value;
      }
      before = line;
    }
  }
  return ok({ widthPx: width, heightPx: height, grey, light, density });
}

/** Walks the chunks, each held against its check sum. */
function readChunks(bytes: Uint8Array): Result<Chunks> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let head: Omit<Chunks, 'palette' | 'see' | 'data' | 'density'> | null = null;
  let [palette, see]: [Uint8Array, Uint8Array] = [new Uint8Array(0), new Uint8Array(0)];
  let density: PictureDensity | null = null;
  const data: Uint8Array[] = [];
  for (let at = SIGNATURE.length; ;) {
    if (at + 12 > bytes.length) return cutOffPicture();
    const length = view.getUint32(at);
    const name = String.fromCharCode(...bytes.subarray(at + 4, at + 8));
    if (at + 12 + length > bytes.length) return cutOffPicture();
    const body = bytes.subarray(at + 8, at + 8 + length);
    // Chunks in capitals must be understood and so be whole; others are passed over.
    const isNeeded = (bytes[at + 4] & 0x20) === 0;
    if (isNeeded && crc32(bytes.subarray(at + 4, at + 8 + length)) !== view.getUint32(at + 8 + length))
      return brokenPicture(`the check sum of ${/^[A-Z]{4}$/.test(name) ? name : 'a part'} is wrong`);
    at += 12 + length;
    if (head === null && name !== 'IHDR') return brokenPicture('it does not begin with its size');
    if (name === 'IHDR') {
      const read = readHead(body);
      if ('ok' in read) return read;
      head = read;
    } else if (name === 'PLTE') palette = body;
    else if (name === 'tRNS') see = body;
    else if (name === 'IDAT') data.push(body);
    else if (name === 'acTL') return unreadKind('an animated picture');
    else if (name === 'pHYs' && length === 9) density = densityOf(body);
    else if (name === 'IEND') break;
    else if (isNeeded) return unreadKind(`a PNG with a part called ${name}`);
  }
  if (head === null || data.length === 0) return cutOffPicture();
  if (head.colourType === 3 && palette.length < 3) return brokenPicture('it has no palette');
  return ok({ ...head, palette, see, data, density });
}

function readHead(body: Uint8Array): Omit<Chunks, 'palette' | 'see' | 'data' | 'density'> | Fail {
  if (body.length !== 13) return brokenPicture('its size cannot be read');
  const view = new DataView(body.buffer, body.byteOffset, 13);
  const [width, height] = [view.getUint32(0), view.getUint32(4)];
  const fault = sizeFault(width, height);
  if (fault !== null) return fault;
  const [depth, colourType, packing, filter, interlace] = body.subarray(8);
  const type = (COLOUR_TYPES as Readonly<Record<number, (typeof COLOUR_TYPES)[number] | undefined>>)[colourType];
  if (type === undefined || !type.depths.includes(depth) || packing !== 0 || filter !== 0 || interlace > 1)
    return brokenPicture('its colours are of no known kind');
  return { width, height, depth, colourType, channels: type.channels, isInterlaced: interlace === 1 };
}

/** px to the metre, where that is its unit (PNG, chapter 11.3.4.3). */
function densityOf(body: Uint8Array): PictureDensity | null {
  const view = new DataView(body.buffer, body.byteOffset, 9);
  const [x, y] = [view.getUint32(0) / 1000, view.getUint32(4) / 1000];
  return body[8] === 1 && x > 0 && y > 0 ? { x, y, saidBy: 'pHYs' } : null;
}

/** Bytes given to the inflater at a time: what it makes of them stays under 66 MB, whatever they hold. */
const GIVEN_BYTES = 2 ** 16;

/** A byte stands for no more than so many (RFC 1951: 258 to two bits), with room for what is round it. */
const MOST_GROWTH = 1040;

/** Exactly so many bytes: what is over is left, what is missing fails. */
function inflated(data: readonly Uint8Array[], total: number): Result<Uint8Array> {
  const given = data.reduce((sum, { length }) => sum + length, 0);
  // Asked before anything is made room for: the size it says is a claim.
  if (total > MOST_GROWTH * given) return cutOffPicture();
  const whole = new Uint8Array(total);
  let filled = 0;
  const inflater = new Unzlib((part) => {
    whole.set(part.subarray(0, total - filled), filled);
    filled = Math.min(total, filled + part.length);
  });
  try {
    for (const body of data)
      for (let at = 0; at < body.length && filled < total; at += GIVEN_BYTES)
        inflater.push(body.subarray(at, at + GIVEN_BYTES));
  } catch {
    return brokenPicture('its pixels cannot be unpacked');
  }
  // The inflater keeps its last bytes back until it is told that nothing follows.
  if (filled < total) {
    try {
      inflater.push(new Uint8Array(4), true);
    } catch {
      return cutOffPicture();
    }
  }
  return filled < total ? cutOffPicture() : ok(whole);
}

/** Undoes the filter of a row in place (PNG, chapter 9.2). @returns false for one that is not known. */
function unfilter(kind: number, line: Uint8Array, before: Uint8Array, step: number): boolean {
  switch (kind) {
    case 0:
      return true;
    case 1:
      for (let i = step; i < line.length; i += 1) line[i] += line[i - step];
      return true;
    case 2:
      for (let i = 0; i < line.length; i += 1) line[i] += before[i];
      return true;
    case 3:
      for (let i = 0; i < line.length; i += 1) line[i] += ((i < step ? 0 : line[i - step]) + before[i]) >> 1;
      return true;
    case 4:
      for (let i = 0; i < line.length; i += 1) {
        const [left, up, corner] = i < step ? [0, before[i], 0] : [line[i - step], before[i], before[i - step]];
        const sum = left + up - corner;
        const [a, b, c] = [Math.abs(sum - left), Math.abs(sum - up), Math.abs(sum - corner)];
        line[i] += a <= b && a <= c ? left : b <= c ? up : corner;
      }
      return true;
    default:
      return false;
  }
}

/** A reader of the pixel in a column of an unpacked row; NaN where its colour is not there. */
function pixelReader(chunks: Chunks, light: PictureLight): (line: Uint8Array, column: number) => number {
  const { depth, colourType, channels, palette, see } = chunks;
  const most = 2 ** depth - 1;
  const sample = (line: Uint8Array, i: number): number => {
    if (depth === 8) return line[i];
    if (depth === 16) return (line[2 * i] << 8) | line[2 * i + 1];
    return (line[(i * depth) >> 3] >> (8 - depth - ((i * depth) & 7))) & most;
  };
  if (colourType === 3) {
    const make = greyMaker(light, 255);
    const greys = Array.from({ length: Math.floor(palette.length / 3) }, (_, i) =>
      make(palette[3 * i], palette[3 * i + 1], palette[3 * i + 2], i < see.length ? see[i] / 255 : 1),
    );
    return (line, column) => {
      const index = sample(line, column);
      return index < greys.length ? greys[index] : NaN;
    };
  }
  const make = greyMaker(light, most);
  // One colour may be named as see-through (PNG, chapter 11.3.1.1).
  const clear =
    see.length === 2 * channels ? Array.from({ length: channels }, (_, k) => (see[2 * k] << 8) | see[2 * k + 1]) : null;
  const hasAlpha = colourType >= 4;
  return (line, column) => {
    const at = column * channels;
    const red = sample(line, at);
    const [green, blue] = channels < 3 ? [red, red] : [sample(line, at + 1), sample(line, at + 2)];
    const isClear =
      clear !== null && !hasAlpha && red === clear[0] && (channels < 3 || (green === clear[1] && blue === clear[2]));
    return make(red, green, blue, isClear ? 0 : hasAlpha ? sample(line, at + channels - 1) / most : 1);
  };
}
