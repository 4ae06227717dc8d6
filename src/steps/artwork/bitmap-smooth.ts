import type { Bitmap } from '../../model/bitmap.ts';

/** A bell is cut off at so many of its widths: what is left out is 0.3 %. */
const REACH = 3;

/**
 * The picture seen through a bell (Gauss) of a standard deviation in px, > 0, rows first and then columns; beyond its edge the last pixel goes on. It takes
 * noise away and rounds corners by about as much.
 */
export function smoothBitmap(bitmap: Bitmap, widthPx: number): Bitmap {
  const reach = Math.ceil(REACH * widthPx);
  const bell = Float64Array.from({ length: 2 * reach + 1 }, (_, i) => Math.exp(-0.5 * ((i - reach) / widthPx) ** 2));
  const total = bell.reduce((sum, value) => sum + value, 0);
  const weights = bell.map((value) => value / total);
  const { widthPx: w, heightPx: h } = bitmap;
  const along = (from: Float32Array, step: number, count: number, across: number, lines: number): Float32Array => {
    const made = new Float32Array(from.length);
    for (let line = 0; line < lines; line += 1) {
      for (let i = 0; i < count; i += 1) {
        let sum = 0;
        for (let k = -reach; k <= reach; k += 1) {
          const place = Math.min(count - 1, Math.max(0, i + k));
          sum += weights[k + reach] * from[line * across + place * step];
        }
        made[line * across + i * step] = sum;
      }
    }
    return made;
  };
  return { ...bitmap, grey: along(along(bitmap.grey, 1, w, w, h), w, h, 1, w) };
}
