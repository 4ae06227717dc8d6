/** Width of a figure and height of a capital, as shares of the font's size: bold letters of any plain type are no wider. */
const FIGURE = 0.7;
const CAPITAL = 0.75;

/** @returns the largest font size, mm, at which some figures stay within a round place, and so off the lines of what they number. */
export const sizeInside = (text: string, radiusMm: number): number =>
  (2 * radiusMm) / Math.hypot(FIGURE * text.length, CAPITAL);
