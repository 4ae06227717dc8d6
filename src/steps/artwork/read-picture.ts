import { fail, type Result } from '../../base/result.ts';
import type { Bitmap, PictureLight } from '../../model/bitmap.ts';
import { isJpeg } from './jpeg-header.ts';
import { unreadKind } from './picture-faults.ts';
import { readJpeg } from './read-jpeg.ts';
import { isPng, readPng } from './read-png.ts';

/** Kinds of pictures that are told but not read: letters at a place of the file, and their name. */
const OTHERS: readonly (readonly [at: number, letters: string, name: string])[] = [
  [0, 'GIF8', 'a GIF'],
  [8, 'WEBP', 'a WebP'],
  [0, 'BM', 'a BMP'],
  [0, 'II*\0', 'a TIFF'],
  [0, 'MM\0*', 'a TIFF'],
  [4, 'ftyp', 'a HEIC or AVIF'],
  [0, '%PDF', 'a PDF'],
];

/** Whether bytes are of a picture in pixels, of a kind that is read or not; a drawing in lines is none. */
export const isPicture = (bytes: Uint8Array): boolean => isPng(bytes) || isJpeg(bytes) || otherKind(bytes) !== null;

/** Reads a picture in grey. @returns fails with `artwork/picture-…`. */
export function readPicture(bytes: Uint8Array, light: PictureLight): Result<Bitmap> {
  if (isPng(bytes)) return readPng(bytes, light);
  if (isJpeg(bytes)) return readJpeg(bytes, light);
  const other = otherKind(bytes);
  if (other !== null) return unreadKind(`${other} file`);
  return fail('artwork/picture-kind', 'This is no picture that is read: save it as PNG or JPEG.');
}

function otherKind(bytes: Uint8Array): string | null {
  const found = OTHERS.find(([at, letters]) =>
    Array.from(letters).every((letter, i) => bytes[at + i] === letter.charCodeAt(0)),
  );
  return found === undefined ? null : found[2];
}
