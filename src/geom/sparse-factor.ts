import { runAtOnce, runWithPauses, type Stepwise } from '../base/stepwise.ts';
import { factorColumns, PANEL_STEP } from './dense-panel.ts';
import { DenseRoom } from './dense-room.ts';
import type { SolveHalf } from './dense-wasm.ts';
import type { FactorPlan } from './sparse-plan.ts';

/** Numbers per node on a side of an entry: 1 for one unknown per node, 2 for an x and a y that meet in 2 x 2 blocks. */
export type BlockSize = 1 | 2;

/** Multiplications between two pauses: a few milliseconds. */
const PAUSE_WORK = 1e7;
/** Numbers of the factor that are gone through between two pauses of solving: a few milliseconds. */
const PAUSE_ENTRIES = 3e6;
/** Rows of a large square that are brought up to date at a time, a multiple of the tile. */
const STRIP_ROWS = 64;
/** Numbers that are set or moved in the time of one multiplication of a product. */
const MOVES_PER_WORK = 0.25;

/**
 * Bytes that a factor of this plan takes: known before any of them is asked for. Beyond {@link MOST_ROOM_BYTES} it is slower, and few
 * machines have it.
 */
export function factorBytes(plan: FactorPlan, blockSize: BlockSize): number {
  const each = blockSize * blockSize;
  return 8 * (each * (plan.fill + plan.stackSizes[0] + plan.stackSizes[1] + plan.entryRows.length) + 2 * plan.size);
}

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
  /** The panels of all blocks, then two stacks of squares, then the vector that is being solved for. */
  readonly #room: DenseRoom;
  readonly #numbers: Float64Array;
  /** Where either stack begins, and where it ends now. */
  readonly #stackAt: readonly [number, number];
  readonly #top = [0, 0];
  /** Where each block's square lies. */
  readonly #squareAt: Float64Array;
  readonly #firstChild: Int32Array;
  readonly #sibling: Int32Array;
  readonly #xAt: number;

  /** @throws RangeError where the machine has no room for the factor. */
  constructor(plan: FactorPlan, blockSize: BlockSize) {
    const each = blockSize * blockSize;
    const { blocks, stackSizes } = plan;
    this.plan = plan;
    this.blockSize = blockSize;
    this.values = new Float64Array(plan.entryRows.length * each);
    this.#stackAt = [each * plan.fill, each * (plan.fill + stackSizes[0])];
    // Vectors of two numbers are read from even places.
    this.#xAt = 2 * Math.ceil((each * (plan.fill + stackSizes[0] + stackSizes[1])) / 2);
    this.#room = new DenseRoom(this.#xAt + 2 * plan.size, plan.rows);
    this.#numbers = this.#room.numbers;
    this.#squareAt = new Float64Array(blocks.count);
    this.#firstChild = new Int32Array(blocks.count).fill(-1);
    this.#sibling = new Int32Array(blocks.count).fill(-1);
    for (let s = blocks.count - 1; s >= 0; s -= 1) {
      const parent = blocks.parent[s];
      if (parent < 0) continue;
      this.#sibling[s] = this.#firstChild[parent];
      this.#firstChild[parent] = s;
    }
  }

  /** Factors the matrix in `values`. @returns false where it is not positive definite; there is no factor then. */
  factor(): boolean {
    return runAtOnce(this.#factorSteps());
  }

  /**
   * The same with pauses: a large matrix takes seconds.
   * @param pause  called every few milliseconds of work and awaited; throws to call the job off (there is no factor then).
   */
  factorWithPauses(pause: () => Promise<void> | undefined): Promise<boolean> {
    return runWithPauses(this.#factorSteps(), pause);
  }

  *#factorSteps(): Stepwise<boolean> {
    const { blocks } = this.plan;
    this.#top[0] = this.#stackAt[0];
    this.#top[1] = this.#stackAt[1];
    let work = 0;
    for (let s = 0; s < blocks.count; s += 1) {
      const columns = this.blockSize * (blocks.starts[s + 1] - blocks.starts[s]);
      const rows = columns + this.blockSize * blocks.below[s];
      const mine = columns * rows * rows + MOVES_PER_WORK * rows * rows;
      if (work + mine >= PAUSE_WORK) {
        if (work > 0) yield;
        work = 0;
      }
      const isDone = mine < PAUSE_WORK ? this.#factorBlock(s) : yield* this.#factorLargeBlock(s);
      if (!isDone) return false;
      work += Math.min(mine, PAUSE_WORK);
    }
    return true;
  }

  #factorBlock(s: number): boolean {
    const { panelAt, columns, squareAt, below } = this.#begin(s);
    for (let c = this.#firstChild[s]; c >= 0; c = this.#sibling[c])
      this.#takeSquare(c, panelAt, columns, squareAt, below);
    for (let from = 0; from < columns; from += PANEL_STEP) {
      if (!factorColumns(this.#room, panelAt, columns + below, columns, from)) return false;
    }
    if (below > 0) {
      const lowAt = panelAt + columns * columns;
      this.#room.subtract(squareAt, below, lowAt, columns, below, lowAt, columns, below, columns, true);
    }
    return true;
  }

  *#factorLargeBlock(s: number): Stepwise<boolean> {
    const { panelAt, columns, squareAt, below } = this.#begin(s);
    yield;
    for (let c = this.#firstChild[s]; c >= 0; c = this.#sibling[c]) {
      this.#takeSquare(c, panelAt, columns, squareAt, below);
      yield;
    }
    let work = 0;
    for (let from = 0; from < columns; from += PANEL_STEP) {
      if (!factorColumns(this.#room, panelAt, columns + below, columns, from)) return false;
      work += PANEL_STEP * from * (columns + below - from);
      if (work < PAUSE_WORK) continue;
      work = 0;
      yield;
    }
    const lowAt = panelAt + columns * columns;
    for (let from = 0; from < below; from += STRIP_ROWS) {
      const rows = Math.min(STRIP_ROWS, below - from);
      const at = squareAt + from * below;
      const aAt = lowAt + from * columns;
      this.#room.subtract(at, below, aAt, columns, rows, lowAt, columns, from, columns, false);
      this.#room.subtract(at + from, below, aAt, columns, rows, aAt, columns, rows, columns, true);
      work += rows * (from + rows) * columns;
      if (work < PAUSE_WORK) continue;
      work = 0;
      yield;
    }
    return true;
  }

  /** Makes room for a block: its entries in its panel, noughts in its square. The squares of its children are given up. */
  #begin(s: number): { panelAt: number; columns: number; squareAt: number; below: number } {
    const { plan, blockSize } = this;
    const { blocks } = plan;
    const columns = blockSize * (blocks.starts[s + 1] - blocks.starts[s]);
    const below = blockSize * blocks.below[s];
    const panelAt = blockSize * blockSize * plan.panelStarts[s];
    const mine = plan.odd[s];
    const squareAt = this.#top[mine];
    this.#numbers.fill(0, panelAt, panelAt + columns * (columns + below));
    this.#numbers.fill(0, squareAt, squareAt + below * below);
    this.#scatterEntries(s, panelAt, columns);
    this.#squareAt[s] = squareAt;
    this.#top[mine] = squareAt + below * below;
    // The children's squares lie on the other stack, on which nothing is put before they have been taken.
    for (let c = this.#firstChild[s]; c >= 0; c = this.#sibling[c]) {
      this.#top[1 - mine] = Math.min(this.#top[1 - mine], this.#squareAt[c]);
    }
    return { panelAt, columns, squareAt, below };
  }

  #scatterEntries(s: number, panelAt: number, stride: number): void {
    const { plan, values } = this;
    const panels = this.#numbers;
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
  #takeSquare(c: number, panelAt: number, columns: number, squareAt: number, below: number): void {
    const { plan, blockSize } = this;
    const numbers = this.#numbers;
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
        for (let q = 0; q < split; q += 1) numbers[toPanel + rowInParent[rowsAt + q]] += numbers[read + q];
        const toSquare = squareAt + (row - columns) * below - columns;
        for (let q = split; q <= r; q += 1) numbers[toSquare + rowInParent[rowsAt + q]] += numbers[read + q];
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
        numbers[to] += numbers[at];
        numbers[to + 1] += numbers[at + 1];
        numbers[to + columns] += numbers[at + stride];
        numbers[to + columns + 1] += numbers[at + stride + 1];
      }
      const toSquare = squareAt + (2 * row - columns) * below - columns;
      for (let q = split; q <= r; q += 1) {
        const to = toSquare + 2 * rowInParent[rowsAt + q];
        const at = read + 2 * q;
        numbers[to] += numbers[at];
        numbers[to + 1] += numbers[at + 1];
        numbers[to + below] += numbers[at + stride];
        numbers[to + below + 1] += numbers[at + stride + 1];
      }
    }
  }

  /**
   * Solves for the matrix that was factored last.
   * @param xy  two numbers per node of the graph, replaced by the solution. With `blockSize` 2 they are one right-hand side; with 1
   *            they are two right-hand sides side by side.
   */
  solve(xy: Float64Array): void {
    runAtOnce(this.solveSteps(xy));
  }

  /** The same in stretches; `xy` is filled at the end. */
  *solveSteps(xy: Float64Array): Stepwise<void> {
    const { blocks, size } = this.plan;
    const { order } = blocks;
    const x = this.#numbers.subarray(this.#xAt, this.#xAt + 2 * size);
    for (let c = 0; c < order.length; c += 1) {
      x[2 * c] = xy[2 * order[c]];
      x[2 * c + 1] = xy[2 * order[c] + 1];
    }
    for (let from = 0; from < blocks.count;) {
      const to = this.#endOfStretch(from);
      this.#forward(x, from, to);
      from = to;
      if (to < blocks.count) yield;
    }
    // Stretches from the end are not those from the front, but as long.
    const starts: number[] = [];
    for (let from = 0; from < blocks.count; from = this.#endOfStretch(from)) starts.push(from);
    let to = blocks.count;
    for (const from of starts.reverse()) {
      this.#back(x, from, to);
      to = from;
      if (from > 0) yield;
    }
    for (let c = 0; c < order.length; c += 1) {
      xy[2 * order[c]] = x[2 * c];
      xy[2 * order[c] + 1] = x[2 * c + 1];
    }
  }

  /** The block before which to pause when solving begins at block `from`. */
  #endOfStretch(from: number): number {
    const { blocks, panelStarts } = this.plan;
    const enough = panelStarts[from] + PAUSE_ENTRIES / (this.blockSize * this.blockSize);
    if (panelStarts[blocks.count] <= enough) return blocks.count;
    let low = from + 1;
    let high = blocks.count;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (panelStarts[middle] < enough) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  /** Solves downwards for blocks `from .. to`. */
  #forward(x: Float64Array, from: number, to: number): void {
    if (this.blockSize === 1) this.#forwardTwo(x, from, to);
    else if (this.#room.kernel === null) this.#forwardBlocks(x, from, to);
    else {
      for (let s = from; s < to; s += 1) this.#callKernel(this.#room.kernel.forward, s);
    }
  }

  /** Solves upwards for blocks `from .. to`, the last first. */
  #back(x: Float64Array, from: number, to: number): void {
    if (this.blockSize === 1) this.#backTwo(x, from, to);
    else if (this.#room.kernel === null) this.#backBlocks(x, from, to);
    else {
      for (let s = to - 1; s >= from; s -= 1) this.#callKernel(this.#room.kernel.back, s);
    }
  }

  #callKernel(half: SolveHalf, s: number): void {
    const { blocks, rowStarts, panelStarts } = this.plan;
    const all = 8 * this.#xAt;
    const own = all + 16 * blocks.starts[s];
    const columns = 2 * (blocks.starts[s + 1] - blocks.starts[s]);
    half(32 * panelStarts[s], columns, own, this.#room.indicesAt + 4 * rowStarts[s], blocks.below[s], all);
  }

  #forwardTwo(x: Float64Array, from: number, to: number): void {
    const { blocks, rows, rowStarts, panelStarts } = this.plan;
    const panels = this.#numbers;
    for (let s = from; s < to; s += 1) {
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

  #backTwo(x: Float64Array, from: number, to: number): void {
    const { blocks, rows, rowStarts, panelStarts } = this.plan;
    const panels = this.#numbers;
    for (let s = to - 1; s >= from; s -= 1) {
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

  #forwardBlocks(x: Float64Array, from: number, to: number): void {
    const { blocks, rows, rowStarts, panelStarts } = this.plan;
    const panels = this.#numbers;
    for (let s = from; s < to; s += 1) {
      const columns = 2 * (blocks.starts[s + 1] - blocks.starts[s]);
      const at = 2 * blocks.starts[s];
      let row = 4 * panelStarts[s];
      for (let i = 0; i < columns; i += 1, row += columns) {
        let u = x[at + i];
        for (let p = 0; p < i; p += 1) u -= panels[row + p] * x[at + p];
        x[at + i] = u * panels[row + i];
      }
      for (let r = rowStarts[s]; r < rowStarts[s + 1]; r += 1, row += 2 * columns) {
        // Even and odd columns are summed apart, as the kernel does.
        let u0 = 0;
        let u1 = 0;
        let v0 = 0;
        let v1 = 0;
        for (let p = 0; p < columns; p += 2) {
          u0 += panels[row + p] * x[at + p];
          u1 += panels[row + p + 1] * x[at + p + 1];
          v0 += panels[row + columns + p] * x[at + p];
          v1 += panels[row + columns + p + 1] * x[at + p + 1];
        }
        x[2 * rows[r]] -= u0 + u1;
        x[2 * rows[r] + 1] -= v0 + v1;
      }
    }
  }

  #backBlocks(x: Float64Array, from: number, to: number): void {
    const { blocks, rows, rowStarts, panelStarts } = this.plan;
    const panels = this.#numbers;
    for (let s = to - 1; s >= from; s -= 1) {
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
