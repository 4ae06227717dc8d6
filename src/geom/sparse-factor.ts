import { factorPanel, subtractProducts } from './sparse-dense.ts';
import type { FactorPlan } from './sparse-plan.ts';

/** Numbers per node on a side of an entry: 1 for one unknown per node, 2 for an x and a y that meet in 2 x 2 blocks. */
export type BlockSize = 1 | 2;

/** Multiplications between two pauses: about ten milliseconds. */
const PAUSE_WORK = 2e7;

/**
 * The Cholesky factor of a sparse symmetric positive definite matrix, by the multifrontal method (Duff and Reid 1983; Liu, "The
 * multifrontal method for sparse matrix solution", 1992): each block of columns is factored densely and hands its change to the rest,
 * a dense square, on to its parent. All room is taken when the object is made; factoring and solving allocate nothing.
 */
export class SparseFactor {
  readonly plan: FactorPlan;
  readonly blockSize: BlockSize;
  /** The lower half of the matrix: `blockSize`² numbers per entry of the plan, row by row. Fill it, then call {@link factor}. */
  readonly values: Float64Array;
  readonly #panels: Float64Array;
  readonly #stacks: readonly [Float64Array, Float64Array];
  /** Where either stack ends now. */
  readonly #top = [0, 0];
  /** Where each block's square lies on its stack. */
  readonly #squareAt: Float64Array;
  readonly #firstChild: Int32Array;
  readonly #sibling: Int32Array;
  readonly #x: Float64Array;

  constructor(plan: FactorPlan, blockSize: BlockSize) {
    const each = blockSize * blockSize;
    this.plan = plan;
    this.blockSize = blockSize;
    this.values = new Float64Array(plan.entryRows.length * each);
    this.#panels = new Float64Array(plan.fill * each);
    this.#stacks = [new Float64Array(plan.stackSizes[0] * each), new Float64Array(plan.stackSizes[1] * each)];
    this.#squareAt = new Float64Array(plan.blocks.count);
    this.#firstChild = new Int32Array(plan.blocks.count).fill(-1);
    this.#sibling = new Int32Array(plan.blocks.count).fill(-1);
    for (let s = plan.blocks.count - 1; s >= 0; s -= 1) {
      const parent = plan.blocks.parent[s];
      if (parent < 0) continue;
      this.#sibling[s] = this.#firstChild[parent];
      this.#firstChild[parent] = s;
    }
    this.#x = new Float64Array(2 * plan.size);
  }

  /** Factors the matrix in `values`. @returns false where it is not positive definite; there is no factor then. */
  factor(): boolean {
    this.#begin();
    for (let s = 0; s < this.plan.blocks.count; s += 1) if (!this.#factorBlock(s)) return false;
    return true;
  }

  /**
   * The same with pauses: a large matrix takes seconds.
   * @param pause  called about every ten milliseconds of work and awaited; throws to call the job off (there is no factor then).
   */
  async factorWithPauses(pause: () => Promise<void> | undefined): Promise<boolean> {
    const { blocks } = this.plan;
    this.#begin();
    let work = 0;
    for (let s = 0; s < blocks.count; s += 1) {
      if (!this.#factorBlock(s)) return false;
      const columns = this.blockSize * (blocks.starts[s + 1] - blocks.starts[s]);
      const rows = columns + this.blockSize * blocks.below[s];
      work += columns * rows * rows;
      if (work < PAUSE_WORK) continue;
      work = 0;
      await pause();
    }
    return true;
  }

  #begin(): void {
    this.#panels.fill(0);
    this.#top[0] = 0;
    this.#top[1] = 0;
  }

  #factorBlock(s: number): boolean {
    const { plan, blockSize } = this;
    const { blocks } = plan;
    const panels = this.#panels;
    const top = this.#top;
    const columns = blockSize * (blocks.starts[s + 1] - blocks.starts[s]);
    const below = blockSize * blocks.below[s];
    const panelAt = blockSize * blockSize * plan.panelStarts[s];
    const mine = plan.odd[s];
    const square = this.#stacks[mine];
    const squareAt = top[mine];
    this.#scatterEntries(s, panelAt, columns);
    if (below > 0) square.fill(0, squareAt, squareAt + below * below);
    for (let c = this.#firstChild[s]; c >= 0; c = this.#sibling[c]) {
      this.#takeSquare(c, panelAt, columns, square, squareAt, below);
      top[1 - mine] = Math.min(top[1 - mine], this.#squareAt[c]);
    }
    if (!factorPanel(panels, panelAt, columns + below, columns)) return false;
    if (below === 0) return true;
    const lowAt = panelAt + columns * columns;
    subtractProducts(
      square,
      squareAt,
      below,
      panels,
      lowAt,
      columns,
      below,
      panels,
      lowAt,
      columns,
      below,
      columns,
      true,
    );
    this.#squareAt[s] = squareAt;
    top[mine] = squareAt + below * below;
    return true;
  }

  #scatterEntries(s: number, panelAt: number, stride: number): void {
    const { plan, values } = this;
    const panels = this.#panels;
    const first = plan.blocks.starts[s];
    const end = plan.blocks.starts[s + 1];
    const { entryStarts, entryPanelRow } = plan;
    if (this.blockSize === 1) {
      for (let c = first; c < end; c += 1) {
        const to = panelAt + c - first;
        for (let p = entryStarts[c]; p < entryStarts[c + 1]; p += 1)
          panels[to + entryPanelRow[p] * stride] += values[p];
      }
      return;
    }
    for (let c = first; c < end; c += 1) {
      const column = panelAt + 2 * (c - first);
      for (let p = entryStarts[c]; p < entryStarts[c + 1]; p += 1) {
        const to = column + 2 * entryPanelRow[p] * stride;
        panels[to] += values[4 * p];
        panels[to + 1] += values[4 * p + 1];
        panels[to + stride] += values[4 * p + 2];
        panels[to + stride + 1] += values[4 * p + 3];
      }
    }
  }

  /** Adds what child `c` changes to its parent's panel and square. */
  #takeSquare(
    c: number,
    panelAt: number,
    columns: number,
    square: Float64Array,
    squareAt: number,
    below: number,
  ): void {
    const { plan, blockSize } = this;
    const panels = this.#panels;
    const from = this.#stacks[plan.odd[c]];
    const fromAt = this.#squareAt[c];
    const { rowInParent } = plan;
    const rowsAt = plan.rowStarts[c];
    const count = plan.blocks.below[c];
    const stride = blockSize * count;
    const ownColumns = columns / blockSize;
    let inPanel = 0;
    while (inPanel < count && rowInParent[rowsAt + inPanel] < ownColumns) inPanel += 1;
    if (blockSize === 1) {
      for (let r = 0; r < count; r += 1) {
        const row = rowInParent[rowsAt + r];
        const read = fromAt + r * stride;
        const toPanel = panelAt + row * columns;
        const split = Math.min(inPanel, r + 1);
        for (let q = 0; q < split; q += 1) panels[toPanel + rowInParent[rowsAt + q]] += from[read + q];
        const toSquare = squareAt + (row - columns) * below - columns;
        for (let q = split; q <= r; q += 1) square[toSquare + rowInParent[rowsAt + q]] += from[read + q];
      }
      return;
    }
    for (let r = 0; r < count; r += 1) {
      const row = rowInParent[rowsAt + r];
      const read = fromAt + 2 * r * stride;
      const toPanel = panelAt + 2 * row * columns;
      const split = Math.min(inPanel, r + 1);
      for (let q = 0; q < split; q += 1) {
        const to = toPanel + 2 * rowInParent[rowsAt + q];
        const at = read + 2 * q;
        panels[to] += from[at];
        panels[to + 1] += from[at + 1];
        panels[to + columns] += from[at + stride];
        panels[to + columns + 1] += from[at + stride + 1];
      }
      const toSquare = squareAt + (2 * row - columns) * below - columns;
      for (let q = split; q <= r; q += 1) {
        const to = toSquare + 2 * rowInParent[rowsAt + q];
        const at = read + 2 * q;
        square[to] += from[at];
        square[to + 1] += from[at + 1];
        square[to + below] += from[at + stride];
        square[to + below + 1] += from[at + stride + 1];
      }
    }
  }

  /**
   * Solves for the matrix that was factored last.
   * @param xy  two numbers per node of the graph, replaced by the solution. With `blockSize` 2 they are one right-hand side; with 1
   *            they are two right-hand sides side by side.
   */
  solve(xy: Float64Array): void {
    const { order } = this.plan.blocks;
    const x = this.#x;
    for (let c = 0; c < order.length; c += 1) {
      x[2 * c] = xy[2 * order[c]];
      x[2 * c + 1] = xy[2 * order[c] + 1];
    }
    if (this.blockSize === 1) {
      this.#forwardTwo(x);
      this.#backTwo(x);
    } else {
      this.#forwardBlocks(x);
      this.#backBlocks(x);
    }
    for (let c = 0; c < order.length; c += 1) {
      xy[2 * order[c]] = x[2 * c];
      xy[2 * order[c] + 1] = x[2 * c + 1];
    }
  }

  #forwardTwo(x: Float64Array): void {
    const { blocks, rows, rowStarts, panelStarts } = this.plan;
    const panels = this.#panels;
    for (let s = 0; s < blocks.count; s += 1) {
      const columns = blocks.starts[s + 1] - blocks.starts[s];
      const at = 2 * blocks.starts[s];
      let row = panelStarts[s];
      for (let i = 0; i < columns; i += 1, row += columns) {
        let u = x[at + 2 * i];
        let v = x[at + 2 * i + 1];
        for (let p = 0; p < i; p += 1) {
          const l = panels[row + p];
          u -= l * x[at + 2 * p];
          v -= l * x[at + 2 * p + 1];
        }
        x[at + 2 * i] = u * panels[row + i];
        x[at + 2 * i + 1] = v * panels[row + i];
      }
      for (let r = rowStarts[s]; r < rowStarts[s + 1]; r += 1, row += columns) {
        let u = 0;
        let v = 0;
        for (let p = 0; p < columns; p += 1) {
          const l = panels[row + p];
          u += l * x[at + 2 * p];
          v += l * x[at + 2 * p + 1];
        }
        x[2 * rows[r]] -= u;
        x[2 * rows[r] + 1] -= v;
      }
    }
  }

  #backTwo(x: Float64Array): void {
    const { blocks, rows, rowStarts, panelStarts } = this.plan;
    const panels = this.#panels;
    for (let s = blocks.count - 1; s >= 0; s -= 1) {
      const columns = blocks.starts[s + 1] - blocks.starts[s];
      const at = 2 * blocks.starts[s];
      let row = panelStarts[s] + columns * columns;
      for (let r = rowStarts[s]; r < rowStarts[s + 1]; r += 1, row += columns) {
        const u = x[2 * rows[r]];
        const v = x[2 * rows[r] + 1];
        for (let p = 0; p < columns; p += 1) {
          const l = panels[row + p];
          x[at + 2 * p] -= l * u;
          x[at + 2 * p + 1] -= l * v;
        }
      }
      for (let i = columns - 1; i >= 0; i -= 1) {
        row = panelStarts[s] + i * columns;
        const u = x[at + 2 * i] * panels[row + i];
        const v = x[at + 2 * i + 1] * panels[row + i];
        x[at + 2 * i] = u;
        x[at + 2 * i + 1] = v;
        for (let p = 0; p < i; p += 1) {
          const l = panels[row + p];
          x[at + 2 * p] -= l * u;
          x[at + 2 * p + 1] -= l * v;
        }
      }
    }
  }

  #forwardBlocks(x: Float64Array): void {
    const { blocks, rows, rowStarts, panelStarts } = this.plan;
    const panels = this.#panels;
    for (let s = 0; s < blocks.count; s += 1) {
      const columns = 2 * (blocks.starts[s + 1] - blocks.starts[s]);
      const at = 2 * blocks.starts[s];
      let row = 4 * panelStarts[s];
      for (let i = 0; i < columns; i += 1, row += columns) {
        let u = x[at + i];
        for (let p = 0; p < i; p += 1) u -= panels[row + p] * x[at + p];
        x[at + i] = u * panels[row + i];
      }
      for (let r = rowStarts[s]; r < rowStarts[s + 1]; r += 1, row += 2 * columns) {
        let u = 0;
        let v = 0;
        for (let p = 0; p < columns; p += 1) {
          u += panels[row + p] * x[at + p];
          v += panels[row + columns + p] * x[at + p];
        }
        x[2 * rows[r]] -= u;
        x[2 * rows[r] + 1] -= v;
      }
    }
  }

  #backBlocks(x: Float64Array): void {
    const { blocks, rows, rowStarts, panelStarts } = this.plan;
    const panels = this.#panels;
    for (let s = blocks.count - 1; s >= 0; s -= 1) {
      const columns = 2 * (blocks.starts[s + 1] - blocks.starts[s]);
      const at = 2 * blocks.starts[s];
      let row = 4 * panelStarts[s] + columns * columns;
      for (let r = rowStarts[s]; r < rowStarts[s + 1]; r += 1, row += 2 * columns) {
        const u = x[2 * rows[r]];
        const v = x[2 * rows[r] + 1];
        for (let p = 0; p < columns; p += 1) x[at + p] -= panels[row + p] * u + panels[row + columns + p] * v;
      }
      for (let i = columns - 1; i >= 0; i -= 1) {
        row = 4 * panelStarts[s] + i * columns;
        const u = x[at + i] * panels[row + i];
        x[at + i] = u;
        for (let p = 0; p < i; p += 1) x[at + p] -= panels[row + p] * u;
      }
    }
  }
}
