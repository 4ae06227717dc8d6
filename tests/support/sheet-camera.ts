import type { Vec2 } from '../../src/geom/vec.ts';

/**
 * A camera with square pixels that looks through its picture's middle at a flat sheet, 300 x 200 mm, leaning over it: a pinhole, without the bend of a lens.
 * @returns the place in the picture, px, y down, of one on the sheet, mm, y up, from the sheet's lower left corner.
 */
export function sheetCamera({
  widthPx,
  heightPx,
  focalPx,
}: {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly focalPx: number;
}): (mm: Vec2) => Vec2 {
  // Turned about the upright, tipped back, rolled a little, radians; the sheet's middle is `away` mm from the hole.
  const [turn, tip, roll, away] = [0.45, -0.6, 0.08, 560];
  return ({ x, y }) => {
    let [u, v, w] = [x - 150, y - 100, 0];
    [u, w] = [u * Math.cos(turn) + w * Math.sin(turn), -u * Math.sin(turn) + w * Math.cos(turn)];
    [v, w] = [v * Math.cos(tip) - w * Math.sin(tip), v * Math.sin(tip) + w * Math.cos(tip)];
    [u, v] = [u * Math.cos(roll) - v * Math.sin(roll), u * Math.sin(roll) + v * Math.cos(roll)];
    const depth = away + w;
    return { x: widthPx / 2 + (focalPx * u) / depth, y: heightPx / 2 - (focalPx * v) / depth };
  };
}
