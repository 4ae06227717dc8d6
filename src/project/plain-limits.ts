import * as v from 'valibot';

/** Longest and widest that makes sense, mm: 100 m. */
const MOST_MM = 1e5;

/** Figures of parts: any; of a place; a length over 0, and from 0; a share; an angle. */
export const finite = v.pipe(v.number(), v.finite());
export const placeMm = v.pipe(finite, v.minValue(-MOST_MM), v.maxValue(MOST_MM));
export const lengthMm = v.pipe(finite, v.gtValue(0), v.maxValue(MOST_MM));
export const fromZeroMm = v.pipe(finite, v.minValue(0), v.maxValue(MOST_MM));
export const share = v.pipe(finite, v.minValue(0), v.maxValue(1));

/** A whole number within limits. */
export const wholeWithin = (least: number, most: number) =>
  v.pipe(v.number(), v.integer(), v.minValue(least), v.maxValue(most));

/** A number within limits. */
export const within = (least: number, most: number) => v.pipe(finite, v.minValue(least), v.maxValue(most));

/** A place in numbers of a file or in px, and one in mm. */
export const flatPoint = v.object({ x: finite, y: finite });

/** A file that a part is made from. */
export const plainSource = v.object({
  hash: v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/)),
  fileName: v.string(),
});
