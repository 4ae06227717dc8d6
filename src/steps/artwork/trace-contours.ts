import { fail, ok, type Result } from '../../base/result.ts';
import type { InkField } from '../../model/bitmap.ts';

/** Points of all lines together. */
const MOST_POINTS = 4_000_000;
/** A line keeps this far from the middle of a pixel, px, so that two lines never meet there. */
const APART_PX = 0.01;

/** Ways out of a square between four pixels: up, right, down, left, y down. */
const STEP_X = [0, 1, 0, -1];
const STEP_Y = [-1, 0, 1, 0];

/**
 * Lines round all that is inside, to a part of a pixel: marching squares over the middles of pixels, each place found by straight interpolation. Where
 * pixels inside meet over a corner, the bilinear surface decides (Nielson and Hamann 1991): its saddle at or over the level joins them.
 * @returns closed lines, packed x y, px from the lower left corner, y up, the inside on the left: outlines run counter-clockwise, holes clockwise. No line
 *   crosses another. Fails with `artwork/picture-too-fine`.
 */
export function traceContours(field: InkField): Result<readonly Float64Array[]> {
  const { widthPx, heightPx, ink, level } = field;
  const wide = widthPx + 2;
  // Each line goes down through some edge between two pixels side by side: the left one outside, the right one inside.
  const isDone = new Uint8Array(ink.length);
  const lines: Float64Array[] = [];
  let count = 0;
  const points: number[] = [];
  for (let row = 0; row <= heightPx + 1; row += 1) {
    for (let column = 0; column <= widthPx; column += 1) {
      const at = row * wide + column;
      if (ink[at] >= level || ink[at + 1] < level || isDone[at] === 1) continue;
      points.length = 0;
      let [x, y, heading] = [column, row, 2];
      // x, y: the square's upper left pixel; heading: the way it was entered.
      do {
        if (heading === 2) isDone[y * wide + x] = 1;
        put(points, field, x, y, heading);
        count += 1;
        if (count > MOST_POINTS)
          return fail(
            'artwork/picture-too-fine',
            `The picture has more than ${MOST_POINTS / 1e6} million places of line: smooth it, crop it, or give another threshold.`,
          );
        heading = wayOut(ink, level, y * wide + x, wide, heading);
        x += STEP_X[heading];
        y += STEP_Y[heading];
      } while (x !== column || y !== row || heading !== 2);
      lines.push(Float64Array.from(points));
    }
  }
  return ok(lines);
}

/** Where the line enters a square, through the edge at its back. */
function put(
  points: number[],
  { heightPx, ink, level, widthPx }: InkField,
  x: number,
  y: number,
  heading: number,
): void {
  const wide = widthPx + 2;
  // The edge entered through: its first end and whether it lies across.
  const isAcross = heading === 0 || heading === 2;
  const left = heading === 3 ? x + 1 : x;
  const top = heading === 0 ? y + 1 : y;
  const a = ink[top * wide + left];
  const b = isAcross ? ink[top * wide + left + 1] : ink[(top + 1) * wide + left];
  const share = Math.min(1 - APART_PX, Math.max(APART_PX, (level - a) / (b - a)));
  // Pixel 1, 1 of the field is the picture's first; its middle lies at 0.5, 0.5.
  const px = left - 0.5 + (isAcross ? share : 0);
  const py = top - 0.5 + (isAcross ? 0 : share);
  points.push(px, heightPx - py);
}

/**
 * The way out of a square, given the way in; the inside lies on the left as it is seen. Straight on leads between the two pixels ahead: the left one
 * inside, the right one outside.
 */
function wayOut(ink: Float32Array, level: number, at: number, wide: number, heading: number): number {
  const corners = [at, at + 1, at + wide + 1, at + wide];
  // Ahead on the left and on the right, for a heading up, right, down, left.
  const left = ink[corners[heading]];
  const right = ink[corners[(heading + 1) % 4]];
  const [isLeft, isRight] = [left >= level, right >= level];
  if (isLeft && !isRight) return heading;
  if (!isLeft && !isRight) return (heading + 3) % 4;
  if (isLeft) return (heading + 1) % 4;
  // A saddle: ahead on the left outside, on the right inside.
  const [a, b, c, d] = corners.map((i) => ink[i]);
  const saddle = (a * c - b * d) / (a + c - b - d);
  return saddle >= level ? (heading + 1) % 4 : (heading + 3) % 4;
}
