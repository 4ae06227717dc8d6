import type { PictureLight } from '../../model/bitmap.ts';

/** A value of sRGB, 0 to 1, as a share of light (IEC 61966-2-1, its piecewise curve). */
export const lightOf = (value: number): number => (value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4);

/** The value of sRGB of a share of light, both 0 to 1: the way back. */
export const valueOf = (light: number): number =>
  light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055;

/**
 * Makes grey of colours. Where programs draw, half-covered pixels are blended by the numbers of the file, so that grey is taken from these (Rec.
 * ITU-R BT.601, E'Y); before a camera light adds up, so that grey is taken from light (BT.709, Y). In both a pixel half dark and half light then lies
 * half-way between the two.
 * @param most  the greatest value of a channel, as 255.
 * @returns a function of whole red, green, blue from 0 to `most`, and alpha 0 to 1 over white.
 */
export function greyMaker(
  light: PictureLight,
  most: number,
): (red: number, green: number, blue: number, alpha: number) => number {
  const table = Float64Array.from({ length: most + 1 }, (_, i) => (light === 'photo' ? lightOf(i / most) : i / most));
  const [r, g, b] = light === 'photo' ? [0.2126, 0.7152, 0.0722] : [0.299, 0.587, 0.114];
  return (red, green, blue, alpha) => (r * table[red] + g * table[green] + b * table[blue]) * alpha + 1 - alpha;
}
