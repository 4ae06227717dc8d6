/**
 * Calls `visit(i, j)` once for each box i of the first list and box j of the second that meet or touch. A square grid over the second list
 * brings near ones together.
 * @param first   minX minY maxX maxY per box.
 * @param second  likewise.
 */
export function forEachMeeting(first: Float64Array, second: Float64Array, visit: (i: number, j: number) => void): void {
  const count = second.length / 4;
  if (count === 0) return;
  const grid = gridOver(second);
  const { starts, items, columns } = grid;
  for (let i = 0; i < first.length; i += 4) {
    const [minX, minY, maxX, maxY] = [first[i], first[i + 1], first[i + 2], first[i + 3]];
    const lastRow = rowOf(grid, maxY);
    const lastColumn = columnOf(grid, maxX);
    for (let r = rowOf(grid, minY); r <= lastRow; r += 1) {
      for (let c = columnOf(grid, minX); c <= lastColumn; c += 1) {
        const cell = r * columns + c;
        for (let k = starts[cell]; k < starts[cell + 1]; k += 1) {
          const j = 4 * items[k];
          if (second[j] > maxX || second[j + 2] < minX || second[j + 1] > maxY || second[j + 3] < minY) continue;
          // Boxes that share several cells meet in the one that holds the lower left corner of what they have in common.
          if (rowOf(grid, Math.max(minY, second[j + 1])) !== r || columnOf(grid, Math.max(minX, second[j])) !== c)
            continue;
          visit(i / 4, items[k]);
        }
      }
    }
  }
}

interface BoxGrid {
  readonly minX: number;
  readonly minY: number;
  /** Side of a cell. */
  readonly side: number;
  readonly columns: number;
  readonly rows: number;
  /** Boxes of cell `c`: `items[starts[c] .. starts[c + 1])`. */
  readonly starts: Uint32Array;
  readonly items: Uint32Array;
}

type Frame = Omit<BoxGrid, 'starts' | 'items'>;

/** What lies beside the grid counts to its rim. */
const columnOf = ({ minX, side, columns }: Frame, x: number): number =>
  Math.min(columns - 1, Math.max(0, Math.floor((x - minX) / side)));
const rowOf = ({ minY, side, rows }: Frame, y: number): number =>
  Math.min(rows - 1, Math.max(0, Math.floor((y - minY) / side)));

/** About as many cells as boxes, but none smaller than the mean box: long boxes would stand in too many. */
function gridOver(boxes: Float64Array): BoxGrid {
  const count = boxes.length / 4;
  let [minX, minY, maxX, maxY, size] = [Infinity, Infinity, -Infinity, -Infinity, 0];
  for (let i = 0; i < boxes.length; i += 4) {
    minX = Math.min(minX, boxes[i]);
    minY = Math.min(minY, boxes[i + 1]);
    maxX = Math.max(maxX, boxes[i + 2]);
    maxY = Math.max(maxY, boxes[i + 3]);
    size += Math.max(boxes[i + 2] - boxes[i], boxes[i + 3] - boxes[i + 1]);
  }
  const [width, height] = [maxX - minX, maxY - minY];
  const side = Math.max(Math.sqrt((width * height) / count), width / count, height / count, size / count) || 1;
  const frame = { minX, minY, side, columns: Math.floor(width / side) + 1, rows: Math.floor(height / side) + 1 };
  const starts = new Uint32Array(frame.columns * frame.rows + 1);
  const eachCell = (i: number, use: (cell: number) => void): void => {
    const lastRow = rowOf(frame, boxes[4 * i + 3]);
    const lastColumn = columnOf(frame, boxes[4 * i + 2]);
    for (let r = rowOf(frame, boxes[4 * i + 1]); r <= lastRow; r += 1) {
      for (let c = columnOf(frame, boxes[4 * i]); c <= lastColumn; c += 1) use(r * frame.columns + c);
    }
  };
  for (let i = 0; i < count; i += 1) eachCell(i, (cell) => (starts[cell + 1] += 1));
  for (let c = 0; c + 1 < starts.length; c += 1) starts[c + 1] += starts[c];
  const fill = starts.slice();
  const items = new Uint32Array(starts[starts.length - 1]);
  for (let i = 0; i < count; i += 1) eachCell(i, (cell) => (items[fill[cell]++] = i));
  return { ...frame, starts, items };
}
