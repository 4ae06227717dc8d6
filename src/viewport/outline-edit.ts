import { MM_PER_INCH, type LengthUnit } from '../base/format-length.ts';
import { isSimpleArea } from '../geom/ring-simple.ts';
import { boxOfPoints, ringArea } from '../geom/ring.ts';

/** What is wrong with an outline drawn by hand. */
export type OutlineFault = 'few' | 'crossing' | 'flat' | 'outside';

/** Least area of an outline, mm²: less is a slip of the hand. */
const LEAST_AREA_MM2 = 1;

/** Numbers of an outline: packed x, y, mm, y up. */
export type OutlinePoints = readonly number[];

/** The outline with one corner at another place. */
export const withCornerAt = (points: OutlinePoints, corner: number, x: number, y: number): number[] =>
  points.map((value, i) => (i === 2 * corner ? x : i === 2 * corner + 1 ? y : value));

/** The outline with one corner more, half way between one and the next. */
export function withCornerAfter(points: OutlinePoints, corner: number): number[] {
  const i = 2 * corner;
  const j = (i + 2) % points.length;
  const middle = [(points[i] + points[j]) / 2, (points[i + 1] + points[j + 1]) / 2];
  return [...points.slice(0, i + 2), ...middle, ...points.slice(i + 2)];
}

export const withoutCorner = (points: OutlinePoints, corner: number): number[] =>
  points.filter((_, i) => i >> 1 !== corner);

/**
 * What keeps an outline from being one.
 * @param within  size of the sheet it must lie on; none where it is the sheet.
 */
export function faultOfOutline(
  points: OutlinePoints,
  within: { readonly widthMm: number; readonly heightMm: number } | null,
): OutlineFault | null {
  if (points.length < 6) return 'few';
  const area = ringArea(points);
  if (Math.abs(area) < LEAST_AREA_MM2) return 'flat';
  if (!isSimpleArea([area < 0 ? turnedRound(points) : Float64Array.from(points)])) return 'crossing';
  if (within === null) return null;
  const { minX, minY, maxX, maxY } = boxOfPoints(points);
  return minX < 0 || minY < 0 || maxX > within.widthMm || maxY > within.heightMm ? 'outside' : null;
}

const turnedRound = (points: OutlinePoints): Float64Array =>
  Float64Array.from(points, (_, i) => points[points.length - 2 - i + 2 * (i % 2)]);

/** Round distances between lines of a grid, mm. */
const ROUND_MM: Readonly<Record<LengthUnit, readonly number[]>> = {
  mm: [1, 5, 10, 50, 100, 500, 1000],
  in: [1 / 16, 1 / 4, 1, 2, 6, 12, 36].map((inches) => inches * MM_PER_INCH),
};

/** Distance between lines of a grid over so large a picture, mm: about twenty of them at most, round in the unit that is read. */
export function gridStepMm(sizeMm: number, unit: LengthUnit): number {
  const steps = ROUND_MM[unit];
  return steps.find((step) => step >= sizeMm / 20) ?? steps[steps.length - 1];
}
