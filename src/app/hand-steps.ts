import { MM_PER_INCH, type LengthUnit } from '../base/format-length.ts';

/** How far a key moves what is in hand, with Shift, and where a dragged corner stops, mm. */
export interface HandSteps {
  readonly coarseMm: number;
  readonly fineMm: number;
  readonly dragMm: number;
}

const STEPS: Readonly<Record<LengthUnit, HandSteps>> = {
  mm: { coarseMm: 5, fineMm: 0.5, dragMm: 1 },
  in: { coarseMm: MM_PER_INCH / 4, fineMm: MM_PER_INCH / 32, dragMm: MM_PER_INCH / 16 },
};

/** In the unit that is read: figures stay round. */
export const handSteps = (unit: LengthUnit): HandSteps => STEPS[unit];

/** Which way an arrow key leads, to the right and up. */
export const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowDown: [0, -1],
  ArrowUp: [0, 1],
};
