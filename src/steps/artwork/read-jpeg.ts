import { decode } from 'jpeg-js';
import { ok, type Result } from '../../base/result.ts';
import type { Bitmap, PictureLight } from '../../model/bitmap.ts';
import { readJpegHead } from './jpeg-header.ts';
import { brokenPicture } from './picture-faults.ts';
import { greyMaker } from './picture-grey.ts';

/** Room the decoder may take, MB: of the largest picture, in three whole channels. */
const MOST_MB = 2048;
/** The decoder's own limit, million pixels; ours is asked before. */
const MOST_MP = 70;

/**
 * Reads a JPEG file, baseline or progressive, in grey, turned upright as its Exif says.
 * @returns fails with `artwork/picture-…`.
 */
export function readJpeg(bytes: Uint8Array, light: PictureLight): Result<Bitmap> {
  const head = readJpegHead(bytes);
  if (!head.ok) return head;
  const { widthPx, heightPx, orientation, density } = head.value;
  let data: Uint8Array;
  try {
    // Tolerant of blocks after the last, which grey pictures with restarts have; that the file is whole was looked at before.
    const made = decode(bytes, {
      useTArray: true,
      formatAsRGBA: false,
      tolerantDecoding: true,
      maxResolutionInMP: MOST_MP,
      maxMemoryUsageInMB: MOST_MB,
    });
    if (made.width !== widthPx || made.height !== heightPx) return brokenPicture('its size is told twice');
    data = made.data;
  } catch {
    return brokenPicture('its pixels cannot be unpacked');
  }
  const make = greyMaker(light, 255);
  const isOnSide = orientation >= 5;
  const [width, height] = isOnSide ? [heightPx, widthPx] : [widthPx, heightPx];
  const grey = new Float32Array(width * height);
  const { start, right, down } = upright(orientation, widthPx, heightPx);
  for (let y = 0, at = 0; y < heightPx; y += 1) {
    for (let x = 0; x < widthPx; x += 1, at += 3)
      grey[start + x * right + y * down] = make(data[at], data[at + 1], data[at + 2], 1);
  }
  const turned = density !== null && isOnSide ? { ...density, x: density.y, y: density.x } : density;
  return ok({ widthPx: width, heightPx: height, grey, light, density: turned });
}

/** Where the first stored pixel goes, and how far its neighbours to the right and below stand from it (Exif 2.3, tag 274). */
function upright(orientation: number, w: number, h: number): { start: number; right: number; down: number } {
  switch (orientation) {
    case 2:
      return { start: w - 1, right: -1, down: w };
    case 3:
      return { start: w * h - 1, right: -1, down: -w };
    case 4:
      return { start: w * (h - 1), right: 1, down: -w };
    case 5:
      return { start: 0, right: h, down: 1 };
    case 6:
      return { start: h - 1, right: h, down: -1 };
    case 7:
      return { start: w * h - 1, right: -h, down: -1 };
    case 8:
      return { start: h * (w - 1), right: -h, down: 1 };
    default:
      return { start: 0, right: 1, down: w };
  }
}
