import { runAtOnce, type Stepwise } from '../base/stepwise.ts';
import type { SparseGraph } from './sparse-graph.ts';
import { minimumDegreeOrder } from './sparse-min-degree.ts';
import { supernodeSteps, type Supernodes } from './sparse-supernodes.ts';
import { eliminationTreeSteps } from './sparse-tree.ts';

/** Blocks whose rows are listed between two pauses: a few milliseconds. */
const PAUSE_BLOCKS = 2048;

/**
 * All of a sparse factorisation that depends on the graph alone; made once, used for every matrix with these entries.
 *
 * Block s of the factor is a panel of `columns` of its own and `columns + below` rows, stored row by row. What it changes in the rest
 * of the matrix is a square of `below` rows, kept on one of two stacks (even and odd depth in the tree) until its parent takes it: a
 * parent and its children never share a stack, so neither needs copying.
 */
export interface FactorPlan {
  readonly size: number;
  readonly blocks: Supernodes;
  /** Rows of every block below its own columns, ascending: `rows[rowStarts[s] .. rowStarts[s + 1])`, by column number. */
  readonly rowStarts: Int32Array;
  readonly rows: Int32Array;
  /** For each of those rows its place among the parent's columns and rows. */
  readonly rowInParent: Int32Array;
  /** Where the panel of each block begins, in entries of the matrix; the total at the end. */
  readonly panelStarts: Float64Array;
  /** The lower half of the matrix by columns: entries `entryStarts[c] .. entryStarts[c + 1])` hold rows `entryRows`, the diagonal first. */
  readonly entryStarts: Int32Array;
  readonly entryRows: Int32Array;
  /** Row of each entry within its block's panel. */
  readonly entryPanelRow: Int32Array;
  /** Parity of the depth of each block in the tree, and how much room either stack needs, in entries. */
  readonly odd: Uint8Array;
  readonly stackSizes: readonly [number, number];
  readonly largestFront: number;
  /** Entries stored in the panels. */
  readonly fill: number;
}

/** Works out the shape of the factor for an order of elimination. */
export function planFactor(graph: SparseGraph, order: Int32Array = minimumDegreeOrder(graph)): FactorPlan {
  return runAtOnce(planSteps(graph, order));
}

/** The same in stretches. */
export function* planSteps(graph: SparseGraph, order: Int32Array): Stepwise<FactorPlan> {
  const tree = yield* eliminationTreeSteps(graph, order);
  const blocks = yield* supernodeSteps(tree);
  yield;
  const { entryStarts, entryRows } = lowerEntries(graph, blocks);
  yield;
  const { rowStarts, rows, rowInParent, entryPanelRow } = yield* findRows(graph.size, blocks, entryStarts, entryRows);
  const panelStarts = new Float64Array(blocks.count + 1);
  let largestFront = 0;
  for (let s = 0; s < blocks.count; s += 1) {
    const columns = blocks.starts[s + 1] - blocks.starts[s];
    const front = columns + blocks.below[s];
    largestFront = Math.max(largestFront, front);
    panelStarts[s + 1] = panelStarts[s] + columns * front;
  }
  const odd = depthParity(blocks);
  return {
    size: graph.size,
    blocks,
    rowStarts,
    rows,
    rowInParent,
    panelStarts,
    entryStarts,
    entryRows,
    entryPanelRow,
    odd,
    stackSizes: stackSizes(blocks, odd),
    largestFront,
    fill: panelStarts[blocks.count],
  };
}

/** Index of the entry that holds row `v`, column `w` or the other way round (nodes of the graph). @throws RangeError where there is none. */
export function entryBetween(plan: FactorPlan, v: number, w: number): number {
  const column = Math.min(plan.blocks.place[v], plan.blocks.place[w]);
  const row = Math.max(plan.blocks.place[v], plan.blocks.place[w]);
  let from = plan.entryStarts[column];
  let to = plan.entryStarts[column + 1];
  while (from < to) {
    const middle = (from + to) >> 1;
    if (plan.entryRows[middle] < row) from = middle + 1;
    else to = middle;
  }
  if (from >= plan.entryStarts[column + 1] || plan.entryRows[from] !== row) throw new RangeError(`no entry ${v}, ${w}`);
  return from;
}

function lowerEntries(graph: SparseGraph, blocks: Supernodes): { entryStarts: Int32Array; entryRows: Int32Array } {
  const n = graph.size;
  const entryStarts = new Int32Array(n + 1);
  for (let c = 0; c < n; c += 1) {
    const v = blocks.order[c];
    let count = 1;
    for (let p = graph.starts[v]; p < graph.starts[v + 1]; p += 1)
      if (blocks.place[graph.neighbours[p]] > c) count += 1;
    entryStarts[c + 1] = entryStarts[c] + count;
  }
  // Going through the rows in order and dealing each to its columns leaves every column sorted.
  const entryRows = new Int32Array(entryStarts[n]);
  const put = entryStarts.slice(0, n);
  for (let r = 0; r < n; r += 1) {
    entryRows[put[r]++] = r;
    const v = blocks.order[r];
    for (let p = graph.starts[v]; p < graph.starts[v + 1]; p += 1) {
      const c = blocks.place[graph.neighbours[p]];
      if (c < r) entryRows[put[c]++] = r;
    }
  }
  return { entryStarts, entryRows };
}

/** The rows of every block, and where they and the entries of the matrix stand in the panels. */
interface BlockRows {
  readonly rowStarts: Int32Array;
  readonly rows: Int32Array;
  readonly rowInParent: Int32Array;
  readonly entryPanelRow: Int32Array;
}

function* findRows(n: number, blocks: Supernodes, entryStarts: Int32Array, entryRows: Int32Array): Stepwise<BlockRows> {
  const rowStarts = new Int32Array(blocks.count + 1);
  for (let s = 0; s < blocks.count; s += 1) rowStarts[s + 1] = rowStarts[s] + blocks.below[s];
  const rows = new Int32Array(rowStarts[blocks.count]);
  const finder = new RowFinder(n, blocks, entryStarts, entryRows, {
    rowStarts,
    rows,
    rowInParent: new Int32Array(rows.length),
    entryPanelRow: new Int32Array(entryRows.length),
  });
  for (let s = 0; s < blocks.count; s += PAUSE_BLOCKS) {
    finder.find(s, Math.min(blocks.count, s + PAUSE_BLOCKS));
    yield;
  }
  return finder.found;
}

class RowFinder {
  readonly found: BlockRows;
  readonly #blocks: Supernodes;
  readonly #entryStarts: Int32Array;
  readonly #entryRows: Int32Array;
  readonly #firstChild: Int32Array;
  readonly #sibling: Int32Array;
  /** Block in which each row was met last, and its place among that block's columns and rows. */
  readonly #marked: Int32Array;
  readonly #local: Int32Array;

  constructor(n: number, blocks: Supernodes, entryStarts: Int32Array, entryRows: Int32Array, found: BlockRows) {
    this.found = found;
    this.#blocks = blocks;
    this.#entryStarts = entryStarts;
    this.#entryRows = entryRows;
    this.#firstChild = new Int32Array(blocks.count).fill(-1);
    this.#sibling = new Int32Array(blocks.count).fill(-1);
    this.#marked = new Int32Array(n).fill(-1);
    this.#local = new Int32Array(n);
  }

  /** Lists the rows of blocks `from .. to`; all blocks before them must have been done. */
  find(from: number, to: number): void {
    for (let s = from; s < to; s += 1) {
      this.#listRows(s);
      this.#placeRows(s);
      const parent = this.#blocks.parent[s];
      if (parent < 0) continue;
      this.#sibling[s] = this.#firstChild[parent];
      this.#firstChild[parent] = s;
    }
  }

  #listRows(s: number): void {
    const { rowStarts, rows } = this.found;
    const { starts, below } = this.#blocks;
    const marked = this.#marked;
    const end = starts[s + 1];
    const entriesEnd = this.#entryStarts[end];
    let put = rowStarts[s];
    for (let p = this.#entryStarts[starts[s]]; p < entriesEnd; p += 1) {
      const r = this.#entryRows[p];
      if (r < end || marked[r] === s) continue;
      marked[r] = s;
      rows[put++] = r;
    }
    for (let c = this.#firstChild[s]; c >= 0; c = this.#sibling[c]) {
      for (let p = rowStarts[c]; p < rowStarts[c + 1]; p += 1) {
        const r = rows[p];
        if (r < end || marked[r] === s) continue;
        marked[r] = s;
        rows[put++] = r;
      }
    }
    if (put !== rowStarts[s + 1]) throw new Error(`block ${s}: ${put - rowStarts[s]} rows, ${below[s]} foreseen`);
    rows.subarray(rowStarts[s], put).sort();
  }

  #placeRows(s: number): void {
    const { rowStarts, rows, rowInParent, entryPanelRow } = this.found;
    const { starts } = this.#blocks;
    const local = this.#local;
    const first = starts[s];
    const end = starts[s + 1];
    for (let c = first; c < end; c += 1) local[c] = c - first;
    for (let p = rowStarts[s]; p < rowStarts[s + 1]; p += 1) local[rows[p]] = end - first + p - rowStarts[s];
    const entriesEnd = this.#entryStarts[end];
    for (let p = this.#entryStarts[first]; p < entriesEnd; p += 1) entryPanelRow[p] = local[this.#entryRows[p]];
    for (let c = this.#firstChild[s]; c >= 0; c = this.#sibling[c]) {
      for (let p = rowStarts[c]; p < rowStarts[c + 1]; p += 1) rowInParent[p] = local[rows[p]];
    }
  }
}

function depthParity(blocks: Supernodes): Uint8Array {
  const odd = new Uint8Array(blocks.count);
  for (let s = blocks.count - 1; s >= 0; s -= 1) odd[s] = blocks.parent[s] < 0 ? 0 : 1 - odd[blocks.parent[s]];
  return odd;
}

/** Plays the pushes and pops of a factorisation: a block pushes its square, then takes its children's off the other stack. */
function stackSizes(blocks: Supernodes, odd: Uint8Array): readonly [number, number] {
  const childSquares = new Float64Array(blocks.count);
  const now = [0, 0];
  const most = [0, 0];
  for (let s = 0; s < blocks.count; s += 1) {
    const square = blocks.below[s] * blocks.below[s];
    const mine = odd[s];
    now[mine] += square;
    most[mine] = Math.max(most[mine], now[mine]);
    now[1 - mine] -= childSquares[s];
    if (blocks.parent[s] >= 0) childSquares[blocks.parent[s]] += square;
  }
  return [most[0], most[1]];
}
