import { fillReducingOrder } from './sparse-order.ts';
import type { SparseGraph } from './sparse-graph.ts';
import { findSupernodes, type Supernodes } from './sparse-supernodes.ts';
import { eliminationTree } from './sparse-tree.ts';

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

/** Orders the unknowns and works out the shape of the factor. */
export function planFactor(graph: SparseGraph, order: Int32Array = fillReducingOrder(graph)): FactorPlan {
  const blocks = findSupernodes(eliminationTree(graph, order));
  const { entryStarts, entryRows } = lowerEntries(graph, blocks);
  const { rowStarts, rows, rowInParent, entryPanelRow } = findRows(graph.size, blocks, entryStarts, entryRows);
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

function findRows(n: number, blocks: Supernodes, entryStarts: Int32Array, entryRows: Int32Array) {
  const rowStarts = new Int32Array(blocks.count + 1);
  for (let s = 0; s < blocks.count; s += 1) rowStarts[s + 1] = rowStarts[s] + blocks.below[s];
  const rows = new Int32Array(rowStarts[blocks.count]);
  const rowInParent = new Int32Array(rows.length);
  const entryPanelRow = new Int32Array(entryRows.length);
  const firstChild = new Int32Array(blocks.count).fill(-1);
  const sibling = new Int32Array(blocks.count).fill(-1);
  const marked = new Int32Array(n).fill(-1);
  const local = new Int32Array(n);
  for (let s = 0; s < blocks.count; s += 1) {
    const first = blocks.starts[s];
    const end = blocks.starts[s + 1];
    let put = rowStarts[s];
    const add = (r: number): void => {
      if (r < end || marked[r] === s) return;
      marked[r] = s;
      rows[put++] = r;
    };
    for (let p = entryStarts[first]; p < entryStarts[end]; p += 1) add(entryRows[p]);
    for (let c = firstChild[s]; c >= 0; c = sibling[c]) {
      for (let p = rowStarts[c]; p < rowStarts[c + 1]; p += 1) add(rows[p]);
    }
    if (put !== rowStarts[s + 1])
      throw new Error(`block ${s}: ${put - rowStarts[s]} rows, ${blocks.below[s]} foreseen`);
    rows.subarray(rowStarts[s], put).sort();
    for (let c = first; c < end; c += 1) local[c] = c - first;
    for (let p = rowStarts[s]; p < put; p += 1) local[rows[p]] = end - first + p - rowStarts[s];
    for (let p = entryStarts[first]; p < entryStarts[end]; p += 1) entryPanelRow[p] = local[entryRows[p]];
    for (let c = firstChild[s]; c >= 0; c = sibling[c]) {
      for (let p = rowStarts[c]; p < rowStarts[c + 1]; p += 1) rowInParent[p] = local[rows[p]];
    }
    if (blocks.parent[s] >= 0) {
      sibling[s] = firstChild[blocks.parent[s]];
      firstChild[blocks.parent[s]] = s;
    }
  }
  return { rowStarts, rows, rowInParent, entryPanelRow };
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
