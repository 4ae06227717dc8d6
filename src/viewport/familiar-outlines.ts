import type { Familiar } from './bench-contract.ts';

type Point = readonly [number, number];

/**
 * Outlines in mm, y up from the bench, drawn by us at round sizes: a hand 200 mm long, a head 230 mm high and 155 mm wide,
 * a door 2000 mm by 850 mm. The first ring is filled; the others are open strokes on it.
 */
export const FAMILIAR_OUTLINES: Readonly<Record<Exclude<Familiar, 'none'>, readonly (readonly Point[])[]>> = {
  hand: [rounded(handCorners(), 3)],
  head: [rounded(headCorners(), 3)],
  door: [
    [
      [-425, 0],
      [425, 0],
      [425, 2000],
      [-425, 2000],
    ],
    [
      [330, 1000],
      [330, 1060],
      [345, 1060],
      [345, 1000],
      [330, 1000],
    ],
  ],
};

/** A right hand held up, palm away: wrist, little finger to thumb. */
function handCorners(): Point[] {
  return [
    [-27, 0],
    [-29, 26],
    [-38, 58],
    [-42, 96],
    [-49, 122],
    [-53, 150],
    [-46, 156],
    [-40, 150],
    [-34, 124],
    [-27, 106],
    [-24, 130],
    [-24, 178],
    [-17, 187],
    [-9, 180],
    [-8, 130],
    [-4, 110],
    [0, 132],
    [2, 190],
    [10, 200],
    [18, 191],
    [17, 132],
    [19, 109],
    [25, 128],
    [34, 172],
    [42, 179],
    [49, 171],
    [42, 124],
    [39, 92],
    [47, 84],
    [64, 106],
    [74, 110],
    [79, 102],
    [68, 80],
    [55, 56],
    [36, 34],
    [28, 20],
    [27, 0],
  ];
}

/** A head from the front on its neck, mirrored. */
function headCorners(): Point[] {
  const half: Point[] = [
    [56, 0],
    [50, 24],
    [50, 44],
    [60, 66],
    [70, 96],
    [77, 112],
    [79, 138],
    [76, 160],
    [72, 186],
    [58, 212],
    [34, 227],
    [0, 231],
  ];
  const right = half.slice(0, -1).map(([x, y]): Point => [x, y]);
  return [...right, half[half.length - 1], ...right.map(([x, y]): Point => [-x, y]).reverse()];
}

/** Corners cut (Chaikin's scheme) `times` over; the first and last point, on the bench, stay. */
function rounded(points: readonly Point[], times: number): readonly Point[] {
  let line = points;
  for (let i = 0; i < times; i += 1) {
    const next: Point[] = [line[0]];
    for (let j = 0; j + 1 < line.length; j += 1) {
      const [[ax, ay], [bx, by]] = [line[j], line[j + 1]];
      next.push([0.75 * ax + 0.25 * bx, 0.75 * ay + 0.25 * by], [0.25 * ax + 0.75 * bx, 0.25 * ay + 0.75 * by]);
    }
    next.push(line[line.length - 1]);
    line = next;
  }
  return line;
}
