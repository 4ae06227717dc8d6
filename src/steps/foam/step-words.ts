import { FELT_STEP_MM } from '../../base/tolerance.ts';
import type { FoamSeam } from '../../model/foam-piece.ts';

/** What stands proud along a seam, by side: `4 mm on the face and 2 mm on the back`; '' for what nobody feels. */
export const stepText = ({ faceMm, backMm }: NonNullable<FoamSeam['step']>): string =>
  [
    ...(faceMm < FELT_STEP_MM ? [] : [`${tenths(faceMm)} mm on the face`]),
    ...(backMm < FELT_STEP_MM ? [] : [`${tenths(backMm)} mm on the back`]),
  ].join(' and ');

const tenths = (length: number): number => Math.round(10 * length) / 10;
