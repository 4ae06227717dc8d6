import type { Finding } from '../base/finding.ts';
import { formatNumber, MM_PER_INCH } from '../base/format-length.ts';
import { fail, ok, type Result } from '../base/result.ts';
import type { Bitmap } from '../model/bitmap.ts';
import type { PictureSize } from '../model/artwork-choice.ts';

/** Densities that programs write without having measured, px to the inch. */
const IDLE_DPI: readonly number[] = [72, 96];

/**
 * mm to the px across and down, and what is told of it.
 * @param box  how wide and high the lines are, px.
 */
export function mmPerPxOf(
  size: Exclude<PictureSize, { by: 'photo' }>,
  { density }: Bitmap,
  box: readonly [number, number],
): Result<readonly [number, number]> {
  const even = (mm: number, how: string): Result<readonly [number, number]> =>
    mm > 0 && Number.isFinite(mm)
      ? ok([mm, mm], [scaleNote(`${how}: one pixel is ${formatNumber(mm, 4)} mm`, mm)])
      : fail('artwork/known', 'The length that is known is nought in the picture: name two places that are apart.');
  switch (size.by) {
    case 'points': {
      const px = Math.hypot(size.a.x - size.b.x, size.a.y - size.b.y);
      return even(
        size.mm / px,
        `Scaled by the known length of ${formatNumber(size.mm, 1)} mm over ${formatNumber(px, 1)} pixels`,
      );
    }
    case 'width':
      return even(size.mm / box[0], `Scaled to a width of ${formatNumber(size.mm, 1)} mm over all lines`);
    case 'height':
      return even(size.mm / box[1], `Scaled to a height of ${formatNumber(size.mm, 1)} mm over all lines`);
    case 'dpi':
      return even(MM_PER_INCH / size.dpi, `Scaled by ${formatNumber(size.dpi, 1)} pixels to the inch, as given`);
    case 'file': {
      if (density === null)
        return fail(
          'artwork/picture-no-size',
          'The picture does not say how large it is: give its width or height, a known length, its dots to the inch, or known places.',
        );
      const dpi = density.x * MM_PER_INCH;
      const isIdle = IDLE_DPI.some((one) => Math.abs(dpi - one) < 0.5);
      const text = `Scaled by ${formatNumber(dpi, 1)} pixels to the inch, as the file says (${density.saidBy})`;
      return ok(
        [1 / density.x, 1 / density.y],
        [
          isIdle
            ? {
                ...scaleNote(
                  `${text}, which many programs write without having measured: give a known length to be sure`,
                  1 / density.x,
                ),
                severity: 'warning',
              }
            : scaleNote(text, 1 / density.x),
        ],
      );
    }
  }
}

const scaleNote = (text: string, mmPerPx: number): Finding => ({
  code: 'artwork/picture-scale',
  severity: 'note',
  text: `${text}.`,
  value: mmPerPx,
  unit: 'mm',
  where: {},
});
