import { runAtOnce, type Stepwise } from '../base/stepwise.ts';
import type { SparseGraph } from './sparse-graph.ts';

/** Rows gone through between two pauses: a few milliseconds. */
const PAUSE_ROWS = 8192;

/**
 * The elimination tree of a symmetric matrix in a given order (Liu, "The role of elimination trees in sparse factorization", 1990),
 * numbered so that every node comes after its children and each subtree is one run of numbers.
 */
export interface EliminationTree {
  /** Node of the graph that is eliminated k-th. */
  readonly order: Int32Array;
  /** Place of each node of the graph in `order`. */
  readonly place: Int32Array;
  /** Parent of the k-th, by place, or -1. */
  readonly parent: Int32Array;
  /** How many entries column k of the factor has below its diagonal. */
  readonly below: Int32Array;
}

/** @param order any order of all nodes; the tree's own order is equivalent to it (same factor, other numbering). */
export function eliminationTree(graph: SparseGraph, order: Int32Array): EliminationTree {
  return runAtOnce(eliminationTreeSteps(graph, order));
}

/** The same in stretches. */
export function* eliminationTreeSteps(graph: SparseGraph, order: Int32Array): Stepwise<EliminationTree> {
  const n = graph.size;
  const first = invert(order);
  const parent = new Int32Array(n).fill(-1);
  const ancestor = new Int32Array(n).fill(-1);
  for (let row = 0; row < n; row += PAUSE_ROWS) {
    findParents(graph, order, first, parent, ancestor, row, Math.min(n, row + PAUSE_ROWS));
    yield;
  }
  const post = postorder(parent);
  yield;
  const newOrder = post.map((k) => order[k]);
  const newPlace = invert(post);
  const newParent = post.map((k) => (parent[k] < 0 ? -1 : newPlace[parent[k]]));
  const place = invert(newOrder);
  yield;
  const below = new Int32Array(n);
  const met = new Int32Array(n).fill(-1);
  for (let row = 0; row < n; row += PAUSE_ROWS) {
    countBelow(graph, newOrder, place, newParent, below, met, row, Math.min(n, row + PAUSE_ROWS));
    yield;
  }
  return { order: newOrder, place, parent: newParent, below };
}

export function invert(order: Int32Array): Int32Array {
  const place = new Int32Array(order.length);
  for (let k = 0; k < order.length; k += 1) place[order[k]] = k;
  return place;
}

/** Finds the parents of the nodes whose lowest neighbour above comes in rows `from .. to`. */
function findParents(
  graph: SparseGraph,
  order: Int32Array,
  place: Int32Array,
  parent: Int32Array,
  ancestor: Int32Array,
  from: number,
  to: number,
): void {
  for (let k = from; k < to; k += 1) {
    const v = order[k];
    for (let p = graph.starts[v]; p < graph.starts[v + 1]; p += 1) {
      let i = place[graph.neighbours[p]];
      while (i < k && i >= 0) {
        const up = ancestor[i];
        ancestor[i] = k;
        if (up < 0) {
          parent[i] = k;
          break;
        }
        i = up;
      }
    }
  }
}

/** Numbers a forest so that children come before parents: `result[k]` is the node that comes k-th. */
export function postorder(parent: Int32Array): Int32Array {
  const n = parent.length;
  const firstChild = new Int32Array(n).fill(-1);
  const sibling = new Int32Array(n).fill(-1);
  for (let k = n - 1; k >= 0; k -= 1) {
    if (parent[k] < 0) continue;
    sibling[k] = firstChild[parent[k]];
    firstChild[parent[k]] = k;
  }
  const post = new Int32Array(n);
  let at = 0;
  for (let root = 0; root < n; root += 1) {
    if (parent[root] >= 0) continue;
    let k = root;
    for (;;) {
      while (firstChild[k] >= 0) k = firstChild[k];
      post[at++] = k;
      while (k !== root && sibling[k] < 0) {
        k = parent[k];
        post[at++] = k;
      }
      if (k === root) break;
      k = sibling[k];
    }
  }
  return post;
}

/** Walks up the tree from every neighbour of rows `from .. to`: the nodes met are the columns in which that row is not empty. */
function countBelow(
  graph: SparseGraph,
  order: Int32Array,
  place: Int32Array,
  parent: Int32Array,
  below: Int32Array,
  met: Int32Array,
  from: number,
  to: number,
): void {
  for (let row = from; row < to; row += 1) {
    met[row] = row;
    const v = order[row];
    for (let p = graph.starts[v]; p < graph.starts[v + 1]; p += 1) {
      for (let k = place[graph.neighbours[p]]; k < row && met[k] !== row; k = parent[k]) {
        met[k] = row;
        below[k] += 1;
      }
    }
  }
}
