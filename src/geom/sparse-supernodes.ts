import type { Stepwise } from '../base/stepwise.ts';
import { invert, postorder, type EliminationTree } from './sparse-tree.ts';

/**
 * Runs of columns that are factored as one dense block. Columns are renumbered so that a block's columns are neighbours and every
 * block comes after its children.
 */
export interface Supernodes {
  readonly count: number;
  /** First column of each block, and one past the last at the end. */
  readonly starts: Int32Array;
  /** Rows of the block below its own columns. */
  readonly below: Int32Array;
  /** Block that takes this one's update, or -1. */
  readonly parent: Int32Array;
  /** Node of the graph in each column, and column of each node. */
  readonly order: Int32Array;
  readonly place: Int32Array;
}

/** Blocks up to this many columns are joined whatever zeros it costs: handling a tiny block costs more than its zeros. */
const ALWAYS_JOIN_COLUMNS = 6;
/** Wider blocks are joined while no more than this share of the joined block is zeros. */
const MEDIUM_COLUMNS = 24;
const MEDIUM_ZERO_SHARE = 0.25;
const WIDE_ZERO_SHARE = 0.06;

/**
 * Finds columns of equal structure, then joins blocks with their parents where few zeros are stored for it (Ashcraft and Grimes,
 * "The influence of relaxed supernode partitions on the multifrontal method", 1989).
 */
export function* supernodeSteps(tree: EliminationTree): Stepwise<Supernodes> {
  const exact = equalColumns(tree);
  yield;
  const leader = joinBlocks(exact);
  yield;
  return renumber(tree, exact, leader);
}

interface Blocks {
  readonly starts: Int32Array;
  readonly below: Int32Array;
  readonly parent: Int32Array;
}

function equalColumns(tree: EliminationTree): Blocks {
  const n = tree.order.length;
  const blockOf = new Int32Array(n);
  const starts: number[] = [];
  for (let k = 0; k < n; k += 1) {
    const continues = k > 0 && tree.parent[k - 1] === k && tree.below[k - 1] === tree.below[k] + 1;
    if (!continues) starts.push(k);
    blockOf[k] = starts.length - 1;
  }
  const count = starts.length;
  starts.push(n);
  const below = new Int32Array(count);
  const parent = new Int32Array(count);
  for (let s = 0; s < count; s += 1) {
    const last = starts[s + 1] - 1;
    below[s] = tree.below[last];
    parent[s] = tree.parent[last] < 0 ? -1 : blockOf[tree.parent[last]];
  }
  return { starts: Int32Array.from(starts), below, parent };
}

/** For each block the block that swallowed it (itself where none did). Children come before parents, so one pass up the tree is enough. */
function joinBlocks(blocks: Blocks): Int32Array {
  const count = blocks.below.length;
  const leader = Int32Array.from({ length: count }, (_, s) => s);
  const width = Int32Array.from({ length: count }, (_, s) => blocks.starts[s + 1] - blocks.starts[s]);
  const zeros = new Float64Array(count);
  // Children of each block after joining, as linked lists.
  const firstChild = new Int32Array(count).fill(-1);
  const sibling = new Int32Array(count).fill(-1);
  for (let s = 0; s < count; s += 1) {
    let kept = -1;
    for (let c = firstChild[s]; c >= 0;) {
      const after = sibling[c];
      const extra = width[c] * (width[s] + blocks.below[s] - blocks.below[c]);
      const joined = width[c] + width[s];
      const stored = (joined * (joined + 1)) / 2 + joined * blocks.below[s];
      const share = (zeros[c] + zeros[s] + extra) / stored;
      if (joined <= ALWAYS_JOIN_COLUMNS || share <= (joined <= MEDIUM_COLUMNS ? MEDIUM_ZERO_SHARE : WIDE_ZERO_SHARE)) {
        leader[c] = s;
        width[s] = joined;
        zeros[s] += zeros[c] + extra;
        for (let g = firstChild[c]; g >= 0;) {
          const next = sibling[g];
          sibling[g] = kept;
          kept = g;
          g = next;
        }
      } else {
        sibling[c] = kept;
        kept = c;
      }
      c = after;
    }
    firstChild[s] = kept;
    if (blocks.parent[s] >= 0) {
      sibling[s] = firstChild[blocks.parent[s]];
      firstChild[blocks.parent[s]] = s;
    }
  }
  return leader;
}

function renumber(tree: EliminationTree, blocks: Blocks, leader: Int32Array): Supernodes {
  const count = blocks.below.length;
  const top = new Int32Array(count);
  for (let s = count - 1; s >= 0; s -= 1) top[s] = leader[s] === s ? s : top[leader[s]];
  const kept: number[] = [];
  const index = new Int32Array(count).fill(-1);
  for (let s = 0; s < count; s += 1) {
    if (leader[s] !== s) continue;
    index[s] = kept.length;
    kept.push(s);
  }
  const parent = Int32Array.from(kept, (s) => (blocks.parent[s] < 0 ? -1 : index[top[blocks.parent[s]]]));
  const post = postorder(parent);
  const rank = invert(post);
  // Swallowed blocks come before the block that swallowed them, so ascending order keeps children before parents inside a block.
  const starts = new Int32Array(kept.length + 1);
  for (let s = 0; s < count; s += 1) starts[rank[index[top[s]]] + 1] += blocks.starts[s + 1] - blocks.starts[s];
  for (let b = 0; b < kept.length; b += 1) starts[b + 1] += starts[b];
  const put = starts.slice(0, kept.length);
  const order = new Int32Array(tree.order.length);
  for (let s = 0; s < count; s += 1) {
    const b = rank[index[top[s]]];
    for (let k = blocks.starts[s]; k < blocks.starts[s + 1]; k += 1) order[put[b]++] = tree.order[k];
  }
  return {
    count: kept.length,
    starts,
    below: Int32Array.from(post, (b) => blocks.below[kept[b]]),
    parent: Int32Array.from(post, (b) => (parent[b] < 0 ? -1 : rank[parent[b]])),
    order,
    place: invert(order),
  };
}
