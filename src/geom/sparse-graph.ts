/**
 * Which unknowns meet in a symmetric matrix: for each node its neighbours `neighbours[starts[v] .. starts[v + 1])`, ascending, without
 * the node itself. Every pair appears at both ends.
 */
export interface SparseGraph {
  readonly size: number;
  readonly starts: Int32Array;
  readonly neighbours: Int32Array;
}

/**
 * The graph of packed pairs; doubled pairs and pairs of a node with itself are dropped.
 * @param size   number of nodes; every entry of `pairs` lies below it.
 * @param pairs  a b  a b  …
 */
export function graphOfPairs(size: number, pairs: ArrayLike<number>): SparseGraph {
  const ends = new Int32Array(2 * pairs.length);
  for (let i = 0; i < pairs.length; i += 2) {
    ends[2 * i] = pairs[i];
    ends[2 * i + 1] = pairs[i + 1];
    ends[2 * i + 2] = pairs[i + 1];
    ends[2 * i + 3] = pairs[i];
  }
  return graphOfEnds(size, ends);
}

/** The graph in which the three corners of every packed triangle meet. */
export function graphOfTriangles(size: number, triangles: ArrayLike<number>): SparseGraph {
  const ends = new Int32Array(4 * triangles.length);
  let at = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    for (let k = 0; k < 3; k += 1) {
      const v = triangles[t + k];
      const w = triangles[t + ((k + 1) % 3)];
      ends[at] = v;
      ends[at + 1] = w;
      ends[at + 2] = w;
      ends[at + 3] = v;
      at += 4;
    }
  }
  return graphOfEnds(size, ends);
}

/**
 * Sorts directed pairs by two counting passes (second end, then first) and drops the doubled ones: linear, and the same for any order
 * of the pairs.
 */
function graphOfEnds(size: number, ends: Int32Array): SparseGraph {
  const count = ends.length / 2;
  const bySecond = new Int32Array(count);
  const bucket = new Int32Array(size + 1);
  for (let i = 0; i < count; i += 1) bucket[ends[2 * i + 1] + 1] += 1;
  for (let v = 0; v < size; v += 1) bucket[v + 1] += bucket[v];
  for (let i = 0; i < count; i += 1) bySecond[bucket[ends[2 * i + 1]]++] = i;
  bucket.fill(0);
  for (let i = 0; i < count; i += 1) bucket[ends[2 * i] + 1] += 1;
  for (let v = 0; v < size; v += 1) bucket[v + 1] += bucket[v];
  const sorted = new Int32Array(count);
  for (let i = 0; i < count; i += 1) {
    const pair = bySecond[i];
    sorted[bucket[ends[2 * pair]]++] = ends[2 * pair + 1];
  }
  // After filling, bucket[v] is the end of v's run.
  const starts = new Int32Array(size + 1);
  let kept = 0;
  for (let v = 0, from = 0; v < size; v += 1) {
    const to = bucket[v];
    let last = -1;
    for (let i = from; i < to; i += 1) {
      const w = sorted[i];
      if (w === last || w === v) continue;
      sorted[kept++] = w;
      last = w;
    }
    starts[v + 1] = kept;
    from = to;
  }
  return { size, starts, neighbours: sorted.slice(0, kept) };
}
