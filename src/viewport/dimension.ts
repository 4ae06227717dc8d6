/** A size as a draughtsman writes it, in a plane: straight strokes, and where its figure stands. */
export interface Dimension {
  /** Packed x y x y, mm. */
  readonly strokes: readonly number[];
  /** Middle of the figure's foot. */
  readonly at: readonly [number, number];
  /** The way the figure is read, length 1. */
  readonly along: readonly [number, number];
  readonly mm: number;
}

/** Sizes beside what is measured, as shares of the figure's height: clear of the outline, arrow's length and half width, past the line. */
const CLEAR = 0.5;
const OFF = 1.9;
const ARROW = [0.9, 0.28] as const;
const PAST = 0.4;
const FIGURE_GAP = 0.3;

/**
 * Breadth and height of what lies in a rectangle, under it and to the left of it: lines with an arrow at each end, lines that lead to what is
 * measured, and the figure on the dimension line, read from below and from the right (ISO 129-1).
 * @param box       least x, least y, greatest x, greatest y, mm.
 * @param figureMm  height of the figures, mm.
 */
export function dimensionsOf(
  [minX, minY, maxX, maxY]: readonly [number, number, number, number],
  figureMm: number,
): readonly [Dimension, Dimension] {
  const breadth = dimensionBetween([minX, minY], [maxX, minY], -1, figureMm);
  const height = dimensionBetween([minX, minY], [minX, maxY], 1, figureMm);
  return [breadth, height];
}

/** A dimension beside the way from one corner to the other. @param side  1 to its left, -1 to its right. */
function dimensionBetween(
  [ax, ay]: readonly [number, number],
  [bx, by]: readonly [number, number],
  side: 1 | -1,
  figureMm: number,
): Dimension {
  const mm = Math.hypot(bx - ax, by - ay);
  const [ux, uy] = [(bx - ax) / mm, (by - ay) / mm];
  const [nx, ny] = [-uy, ux];
  const strokes: number[] = [];
  /** From one end: so far towards the other end, and so far to the left, in figures' heights. */
  const at = (x: number, y: number, sign: number, along: number, left: number): [number, number] => {
    const [f, g] = [along * figureMm * sign, left * figureMm];
    return [x + f * ux + g * nx, y + f * uy + g * ny];
  };
  const ends = [
    [ax, ay, 1],
    [bx, by, -1],
  ] as const;
  for (const [x, y, sign] of ends) {
    strokes.push(...at(x, y, sign, 0, side * CLEAR), ...at(x, y, sign, 0, side * (OFF + PAST)));
    for (const half of [ARROW[1], -ARROW[1]])
      strokes.push(...at(x, y, sign, 0, side * OFF), ...at(x, y, sign, ARROW[0], side * OFF + half));
  }
  strokes.push(...at(ax, ay, 1, 0, side * OFF), ...at(bx, by, -1, 0, side * OFF));
  const middle = at((ax + bx) / 2, (ay + by) / 2, 1, 0, side * OFF + FIGURE_GAP);
  return { strokes, at: middle, along: [ux, uy], mm };
}
