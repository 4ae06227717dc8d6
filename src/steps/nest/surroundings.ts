import type { DepthGrid, NearSide } from './depth-grid.ts';
import type { Layout } from './layout.ts';
import type { PoseTable } from './pose-table.ts';

/**
 * What one piece in one pose meets wherever it is put, while all others stay: asked for so many places in a row that what depends on the others
 * alone is gathered once.
 */
export class Surroundings {
  readonly #table: PoseTable;
  /** Where the piece's nought must be to meet another's box, and the way into that one's own frame. */
  readonly #loX: Float64Array;
  readonly #hiX: Float64Array;
  readonly #loY: Float64Array;
  readonly #hiY: Float64Array;
  readonly #x: Float64Array;
  readonly #y: Float64Array;
  readonly #a: Float64Array;
  readonly #b: Float64Array;
  readonly #c: Float64Array;
  readonly #d: Float64Array;
  readonly #weight: Float64Array;
  readonly #grid: Int32Array;
  #count = 0;
  readonly #near: Int32Array;
  readonly #met: Int32Array;
  readonly #cell: Int32Array;
  #nearCount = 0;

  constructor(table: PoseTable, pieces: number) {
    this.#table = table;
    const room = (): Float64Array => new Float64Array(pieces);
    [this.#loX, this.#hiX, this.#loY, this.#hiY] = [room(), room(), room(), room()];
    [this.#x, this.#y, this.#weight] = [room(), room(), room()];
    [this.#a, this.#b, this.#c, this.#d] = [room(), room(), room(), room()];
    this.#grid = new Int32Array(pieces);
    this.#near = new Int32Array(pieces);
    this.#met = new Int32Array(pieces);
    this.#cell = new Int32Array(pieces);
  }

  /**
   * Gathers the others.
   * @param weights  price of a step of depth between pieces `i` and `j`, at `i * count + j`.
   * @param among    numbers of the others that count; all where left out.
   */
  gather(layout: Layout, weights: Float64Array, piece: number, pose: number, among?: readonly number[]): void {
    const { minX, minY, maxX, maxY, turnParts, clear, scale } = this.#table;
    let k = 0;
    const count = among === undefined ? layout.count : among.length;
    for (let i = 0; i < count; i += 1) {
      const j = among === undefined ? i : among[i];
      if (j === piece) continue;
      const other = layout.pose[j];
      const x = layout.x[j];
      const y = layout.y[j];
      this.#x[k] = x;
      this.#y[k] = y;
      this.#loX[k] = x + minX[other] - maxX[pose] - clear;
      this.#hiX[k] = x + maxX[other] - minX[pose] + clear;
      this.#loY[k] = y + minY[other] - maxY[pose] - clear;
      this.#hiY[k] = y + maxY[other] - minY[pose] + clear;
      const isSwapped = this.#table.isSwapped(other, pose);
      const at = 4 * (isSwapped ? pose : other);
      const sign = isSwapped ? -1 : 1;
      this.#a[k] = sign * turnParts[at];
      this.#b[k] = sign * turnParts[at + 1];
      this.#c[k] = sign * turnParts[at + 2];
      this.#d[k] = sign * turnParts[at + 3];
      this.#weight[k] = weights[piece * layout.count + j] * scale[other];
      this.#grid[k] = isSwapped ? this.#table.gridOf(pose, other) : this.#table.gridOf(other, pose);
      k += 1;
    }
    this.#count = k;
  }

  /** Price of all overlaps at a place; what is over `limit` may be any number over it. */
  priceAt(x: number, y: number, limit: number): number {
    const grids = this.#table.grids;
    const loX = this.#loX;
    const hiX = this.#hiX;
    const loY = this.#loY;
    const hiY = this.#hiY;
    const count = this.#count;
    let sum = 0;
    let met = 0;
    const cells = this.#cell;
    const mets = this.#met;
    for (let k = 0; k < count; k += 1) {
      if (x <= loX[k] || x >= hiX[k] || y <= loY[k] || y >= hiY[k]) continue;
      const grid = grids[this.#grid[k]];
      const dx = x - this.#x[k];
      const dy = y - this.#y[k];
      const cell = grid.cellAt(this.#a[k] * dx + this.#c[k] * dy, this.#b[k] * dx + this.#d[k] * dy);
      if (cell < 0) continue;
      sum += this.#weight[k] * grid.floorOf(cell);
      if (sum > limit) return sum;
      mets[met] = k;
      cells[met] = cell;
      met += 1;
    }
    for (let m = 0; m < met; m += 1) {
      const k = mets[m];
      const grid = grids[this.#grid[k]];
      const dx = x - this.#x[k];
      const dy = y - this.#y[k];
      const depth = grid.depthIn(cells[m], this.#a[k] * dx + this.#c[k] * dy, this.#b[k] * dx + this.#d[k] * dy);
      sum += this.#weight[k] * (depth - grid.floorOf(cells[m]));
      if (sum > limit) return sum;
    }
    return sum;
  }

  /** From here on {@link nearPriceAt} asks those alone that are met within `reach` of a place. */
  narrow(x: number, y: number, reach: number): void {
    let count = 0;
    for (let k = 0; k < this.#count; k += 1) {
      if (
        x + reach <= this.#loX[k] ||
        x - reach >= this.#hiX[k] ||
        y + reach <= this.#loY[k] ||
        y - reach >= this.#hiY[k]
      )
        continue;
      this.#near[count] = k;
      count += 1;
    }
    this.#nearCount = count;
  }

  nearPriceAt(x: number, y: number, limit: number): number {
    const grids = this.#table.grids;
    let sum = 0;
    for (let i = 0; i < this.#nearCount; i += 1) {
      const k = this.#near[i];
      if (x <= this.#loX[k] || x >= this.#hiX[k] || y <= this.#loY[k] || y >= this.#hiY[k]) continue;
      sum += this.#weight[k] * this.#depth(grids[this.#grid[k]], k, x, y);
      if (sum > limit) return sum;
    }
    return sum;
  }

  /** Borders of no-fit areas of the near ones that pass within `reach` of a place, into `out`. @returns how many. */
  nearSides(x: number, y: number, reach: number, out: NearSide[]): number {
    const grids = this.#table.grids;
    let count = 0;
    for (let i = 0; i < this.#nearCount; i += 1) {
      const k = this.#near[i];
      const dx = x - this.#x[k];
      const dy = y - this.#y[k];
      const a = this.#a[k];
      const b = this.#b[k];
      const c = this.#c[k];
      const d = this.#d[k];
      const before = count;
      count = grids[this.#grid[k]].nearSides(a * dx + c * dy, b * dx + d * dy, reach, out, count);
      for (let s = before; s < count; s += 1) {
        const side = out[s];
        const nx = side.nx;
        side.nx = a * nx + b * side.ny;
        side.ny = c * nx + d * side.ny;
      }
    }
    return count;
  }

  #depth(grid: DepthGrid, k: number, x: number, y: number): number {
    const dx = x - this.#x[k];
    const dy = y - this.#y[k];
    return grid.depth(this.#a[k] * dx + this.#c[k] * dy, this.#b[k] * dx + this.#d[k] * dy);
  }
}
