import { ok, type Result } from '../../base/result.ts';
import type { PictureDensity } from '../../model/bitmap.ts';
import { brokenPicture, cutOffPicture, sizeFault, unreadKind } from './picture-faults.ts';

export const isJpeg = (bytes: Uint8Array): boolean => bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff;

/** What a JPEG file says of itself before its pixels are read. */
export interface JpegHead {
  /** As stored, before it is turned upright. */
  readonly widthPx: number;
  readonly heightPx: number;
  /** 1 to 8 (Exif 2.3, tag 274): how the stored picture must be turned and mirrored; 1 upright. */
  readonly orientation: number;
  readonly density: PictureDensity | null;
}

const MM_PER_UNIT: Readonly<Record<number, number>> = { 1: 25.4, 2: 10 };
/** Units of resolution of Exif: inch and cm. */
const MM_PER_EXIF_UNIT: Readonly<Record<number, number>> = { 2: 25.4, 3: 10 };

/**
 * Walks the markers of a JPEG file (ITU-T T.81, annex B) to its end. Baseline, extended and progressive pictures of 8 bits in Huffman codes are read.
 * @returns fails with `artwork/picture-…`.
 */
export function readJpegHead(bytes: Uint8Array): Result<JpegHead> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let frame: { widthPx: number; heightPx: number } | null = null;
  let jfif: PictureDensity | null = null;
  let exif: Exif = { orientation: 1, density: null };
  let hasPixels = false;
  for (let at = 2; ;) {
    while (at < bytes.length && bytes[at] === 0xff && bytes[at + 1] === 0xff) at += 1;
    if (at + 2 > bytes.length) return cutOffPicture();
    if (bytes[at] !== 0xff) return brokenPicture('its parts do not follow each other');
    const marker = bytes[at + 1];
    if (marker === 0xd9) break;
    if (marker === 0x01 || (marker >= 0xd0 && marker <= 0xd8)) {
      at += 2;
      continue;
    }
    if (at + 4 > bytes.length) return cutOffPicture();
    const length = view.getUint16(at + 2);
    if (at + 2 + length > bytes.length) return cutOffPicture();
    if (length < 2) return brokenPicture('a part has no length');
    const body = bytes.subarray(at + 4, at + 2 + length);
    if (marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc) {
      if (marker > 0xc2) return unreadKind(marker > 0xc8 ? 'a JPEG in arithmetic code' : 'a lossless JPEG');
      if (body.length < 6) return brokenPicture('its size cannot be read');
      if (body[0] !== 8) return unreadKind(`a JPEG with ${body[0]} bits`);
      if (frame !== null) return unreadKind('a JPEG of several layers');
      frame = { widthPx: (body[3] << 8) | body[4], heightPx: (body[1] << 8) | body[2] };
      const fault = sizeFault(frame.widthPx, frame.heightPx);
      if (fault !== null) return fault;
    } else if (marker === 0xe0) jfif = jfifDensity(body) ?? jfif;
    else if (marker === 0xe1 && startsWith(body, 'Exif\0\0')) exif = readExif(body.subarray(6));
    at += 2 + length;
    if (marker !== 0xda) continue;
    hasPixels = true;
    // Within the pixels only stuffed zeros and restarts follow an 0xff.
    while (at + 1 < bytes.length && !(bytes[at] === 0xff && bytes[at + 1] !== 0 && (bytes[at + 1] & 0xf8) !== 0xd0))
      at += 1;
  }
  if (frame === null || !hasPixels) return cutOffPicture();
  return ok({ ...frame, orientation: exif.orientation, density: jfif ?? exif.density });
}

const startsWith = (body: Uint8Array, text: string): boolean =>
  Array.from(text).every((letter, i) => body[i] === letter.charCodeAt(0));

/** JFIF 1.02: 0 tells the shape of pixels alone. */
function jfifDensity(body: Uint8Array): PictureDensity | null {
  if (body.length < 12 || !startsWith(body, 'JFIF\0')) return null;
  return density(MM_PER_UNIT, body[7], (body[8] << 8) | body[9], (body[10] << 8) | body[11], 'JFIF');
}

function density(
  units: Readonly<Record<number, number | undefined>>,
  unit: number,
  x: number,
  y: number,
  saidBy: PictureDensity['saidBy'],
): PictureDensity | null {
  const mm = units[unit];
  return mm !== undefined && x > 0 && y > 0 && Number.isFinite(x + y) ? { x: x / mm, y: y / mm, saidBy } : null;
}

interface Exif {
  readonly orientation: number;
  readonly density: PictureDensity | null;
}

/** The first directory of Exif 2.3 alone; what cannot be read says nothing. */
function readExif(tiff: Uint8Array): Exif {
  const nothing: Exif = { orientation: 1, density: null };
  const isLittle = tiff[0] === 0x49 && tiff[1] === 0x49;
  if (tiff.length < 14 || (!isLittle && !(tiff[0] === 0x4d && tiff[1] === 0x4d))) return nothing;
  const view = new DataView(tiff.buffer, tiff.byteOffset, tiff.byteLength);
  const first = view.getUint32(4, isLittle);
  if (view.getUint16(2, isLittle) !== 42 || first + 2 > tiff.length) return nothing;
  const count = view.getUint16(first, isLittle);
  let [orientation, unit, x, y] = [1, 2, 0, 0];
  for (let i = 0; i < count && first + 14 + 12 * i <= tiff.length; i += 1) {
    const at = first + 2 + 12 * i;
    const [tag, type] = [view.getUint16(at, isLittle), view.getUint16(at + 2, isLittle)];
    const [short, place] = [view.getUint16(at + 8, isLittle), view.getUint32(at + 8, isLittle)];
    const share = (): number =>
      place + 8 > tiff.length ? 0 : view.getUint32(place, isLittle) / view.getUint32(place + 4, isLittle);
    if (tag === 0x0112 && type === 3 && short >= 1 && short <= 8) orientation = short;
    if (tag === 0x0128 && type === 3) unit = short;
    if (tag === 0x011a && type === 5) x = share();
    if (tag === 0x011b && type === 5) y = share();
  }
  return { orientation, density: density(MM_PER_EXIF_UNIT, unit, x, y, 'EXIF') };
}
