import { orient2d } from './predicates.ts';

/** Two triangles that reach into each other by less than this only touch: edges cut apart come to lie on each other to rounding, mm. */
const TOUCH_MM = 1e-6;

/**
 * Pairs of counter-clockwise triangles that lie on each other by more than a touch. Two convex shapes are apart exactly when a side of one has
 * the other wholly on its outside, so each pair is settled by robust orientation tests; a grid brings near ones together.
 * @param xy         packed corners, mm.
 * @param triangles  three corners each, counter-clockwise.
 * @param most       list no more pairs than this.
 * @returns pairs of triangle numbers, lower first, in ascending order of the grid's walk, and how many there are in truth.
 */
export function overlappingTriangles(
  xy: Float64Array,
  triangles: Uint32Array,
  most: number,
): { pairs: (readonly [number, number])[]; count: number } {
  const count = triangles.length / 3;
  const boxes = triangleBoxes(xy, triangles);
  const grid = gridOf(boxes, count);
  const pairs: (readonly [number, number])[] = [];
  let found = 0;
  for (let cell = 0; cell + 1 < grid.starts.length; cell += 1) {
    for (let i = grid.starts[cell]; i < grid.starts[cell + 1]; i += 1) {
      for (let j = i + 1; j < grid.starts[cell + 1]; j += 1) {
        const [a, b] = [grid.items[i], grid.items[j]];
        if (
          !boxesMeet(boxes, a, b) ||
          grid.cellOf(Math.max(boxes[4 * a], boxes[4 * b]), Math.max(boxes[4 * a + 1], boxes[4 * b + 1])) !== cell
        )
          continue;
        if (isApart(xy, triangles, a, b) || isApart(xy, triangles, b, a)) continue;
        found += 1;
        if (pairs.length < most) pairs.push([Math.min(a, b), Math.max(a, b)]);
      }
    }
  }
  return { pairs, count: found };
}

/** True when a side of triangle `a` has all of triangle `b` on its outside, give or take a touch. */
function isApart(xy: Float64Array, triangles: Uint32Array, a: number, b: number): boolean {
  for (let k = 0; k < 3; k += 1) {
    const p = 2 * triangles[3 * a + k];
    const q = 2 * triangles[3 * a + ((k + 1) % 3)];
    const length = Math.hypot(xy[q] - xy[p], xy[q + 1] - xy[p + 1]);
    let outside = true;
    for (let i = 0; i < 3 && outside; i += 1) {
      const r = 2 * triangles[3 * b + i];
      if (r === p || r === q) continue;
      outside = orient2d(xy[p], xy[p + 1], xy[q], xy[q + 1], xy[r], xy[r + 1]) <= TOUCH_MM * length;
    }
    if (outside) return true;
  }
  return false;
}

/** minX minY maxX maxY per triangle. */
function triangleBoxes(xy: Float64Array, triangles: Uint32Array): Float64Array {
  const boxes = new Float64Array((4 * triangles.length) / 3);
  for (let t = 0; t < triangles.length / 3; t += 1) {
    const [i, j, k] = [2 * triangles[3 * t], 2 * triangles[3 * t + 1], 2 * triangles[3 * t + 2]];
    boxes[4 * t] = Math.min(xy[i], xy[j], xy[k]);
    boxes[4 * t + 1] = Math.min(xy[i + 1], xy[j + 1], xy[k + 1]);
    boxes[4 * t + 2] = Math.max(xy[i], xy[j], xy[k]);
    boxes[4 * t + 3] = Math.max(xy[i + 1], xy[j + 1], xy[k + 1]);
  }
  return boxes;
}

const boxesMeet = (boxes: Float64Array, a: number, b: number): boolean =>
  boxes[4 * a] <= boxes[4 * b + 2] &&
  boxes[4 * b] <= boxes[4 * a + 2] &&
  boxes[4 * a + 1] <= boxes[4 * b + 3] &&
  boxes[4 * b + 1] <= boxes[4 * a + 3];

interface Grid {
  /** Triangles of cell `c`: `items[starts[c] .. starts[c + 1])`. */
  readonly starts: Uint32Array;
  readonly items: Uint32Array;
  cellOf(x: number, y: number): number;
}

/** A square grid of about as many cells as triangles; each triangle stands in every cell its box meets. */
function gridOf(boxes: Float64Array, count: number): Grid {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let t = 0; t < count; t += 1) {
    minX = Math.min(minX, boxes[4 * t]);
    minY = Math.min(minY, boxes[4 * t + 1]);
    maxX = Math.max(maxX, boxes[4 * t + 2]);
    maxY = Math.max(maxY, boxes[4 * t + 3]);
  }
  const side =
    Math.max(Math.sqrt(((maxX - minX) * (maxY - minY)) / count), (maxX - minX) / count, (maxY - minY) / count) || 1;
  const columns = Math.floor((maxX - minX) / side) + 1;
  const rows = Math.floor((maxY - minY) / side) + 1;
  const column = (x: number): number => Math.min(columns - 1, Math.floor((x - minX) / side));
  const row = (y: number): number => Math.min(rows - 1, Math.floor((y - minY) / side));
  const starts = new Uint32Array(columns * rows + 1);
  const eachCell = (t: number, visit: (cell: number) => void): void => {
    const lastRow = row(boxes[4 * t + 3]);
    const lastColumn = column(boxes[4 * t + 2]);
    for (let r = row(boxes[4 * t + 1]); r <= lastRow; r += 1) {
      for (let c = column(boxes[4 * t]); c <= lastColumn; c += 1) visit(r * columns + c);
    }
  };
  for (let t = 0; t < count; t += 1) eachCell(t, (cell) => (starts[cell + 1] += 1));
  for (let c = 0; c < columns * rows; c += 1) starts[c + 1] += starts[c];
  const fill = starts.slice();
  const items = new Uint32Array(starts[columns * rows]);
  for (let t = 0; t < count; t += 1) eachCell(t, (cell) => (items[fill[cell]++] = t));
  return { starts, items, cellOf: (x, y) => row(y) * columns + column(x) };
}
