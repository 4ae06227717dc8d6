import { add3, cross3, dot3, sub3, unit3, type Vec3 } from '../../src/geom/vec.ts';

/** One polygon of a model, corners counter-clockwise seen from outside, mm. */
export type Cell = readonly Vec3[];

/** Rows run downwards, columns to the right, both seen from outside. Neighbouring points may coincide: the cell becomes a triangle. */
export type Grid = readonly (readonly Vec3[])[];

/** A quadrilateral whose corners leave its plane by more than this is written as two triangles, mm. */
const FLAT_ENOUGH = 0.01;

export const mirroredPoint = (p: Vec3): Vec3 => ({ x: -p.x, y: p.y, z: p.z });

/** The same cell seen from its other side. The first corner stays the first. */
export const flipped = (cell: Cell): Cell => [cell[0], ...cell.slice(1).reverse()];

/** The twin of a cell across x = 0, wound to be seen from outside again. */
export const mirrored = (cell: Cell): Cell => flipped(cell.map(mirroredPoint));

/** The cells of a grid of points. */
export function gridCells(grid: Grid): Cell[] {
  const cells: Cell[] = [];
  for (let r = 1; r < grid.length; r++) {
    for (let c = 1; c < grid[r].length; c++) {
      cells.push(...quadCells(grid[r - 1][c - 1], grid[r][c - 1], grid[r][c], grid[r - 1][c]));
    }
  }
  return cells;
}

/** One cell, or two when the four corners do not lie in a plane; the diagonal is the one that stands out, as on a bulging panel. */
export function quadCells(a: Vec3, b: Vec3, c: Vec3, d: Vec3): Cell[] {
  const corners = [a, b, c, d].filter((p, k, all) => !isSame(p, all[(k + 1) % 4]));
  if (corners.length < 3) return [];
  if (corners.length === 3 || isFlat(corners)) return [corners];
  const outward = cross3(sub3(c, a), sub3(d, b));
  const isFirstOutside = dot3(outward, sub3(add3(a, c), add3(b, d))) >= 0;
  return isFirstOutside
    ? [
        [a, b, c],
        [a, c, d],
      ]
    : [
        [b, c, d],
        [b, d, a],
      ];
}

/**
 * A panel with three sides as three fields of quadrilaterals that meet in its middle.
 *
 *            top                Every side has `n` (even) steps. `at(i, j, k)` gives the point with the weights
 *            / \                i / n of the left corner, j / n of the right one, k / n of the top; i + j + k = n,
 *           /   \               whole numbers on the rim, so that the rim can be taken from shared points.
 *      left ----- right
 */
export function threeSidedCells(n: number, at: (left: number, right: number, top: number) => Vec3): Cell[] {
  const half = n / 2;
  const cells: Cell[] = [];
  const corners: readonly Weights[] = [
    [n, 0, 0],
    [0, n, 0],
    [0, 0, n],
  ];
  const middle: Weights = [n / 3, n / 3, n / 3];
  for (let k = 0; k < 3; k++) {
    const corner = corners[k];
    const next = mix(corner, corners[(k + 1) % 3], 0.5);
    const last = mix(corner, corners[(k + 2) % 3], 0.5);
    const grid = Array.from({ length: half + 1 }, (_, r) =>
      Array.from({ length: half + 1 }, (__, c) =>
        at(...mix(mix(corner, next, c / half), mix(last, middle, c / half), r / half)),
      ),
    );
    // Seen from outside the grid runs from the corner along the next side and rises along the last one.
    cells.push(...gridCells([...grid].reverse()));
  }
  return cells;
}

type Weights = readonly [number, number, number];
const mix = (a: Weights, b: Weights, t: number): Weights => [
  a[0] + (b[0] - a[0]) * t,
  a[1] + (b[1] - a[1]) * t,
  a[2] + (b[2] - a[2]) * t,
];

const isSame = (a: Vec3, b: Vec3): boolean => a.x === b.x && a.y === b.y && a.z === b.z;

function isFlat(corners: readonly Vec3[]): boolean {
  const normal = unit3(cross3(sub3(corners[2], corners[0]), sub3(corners[3], corners[1])));
  return Math.abs(dot3(normal, sub3(corners[1], corners[0]))) <= FLAT_ENOUGH;
}
