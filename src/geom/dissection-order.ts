/** A group this small is not parted further. */
const SMALLEST_GROUP = 16;

/**
 * An order of elimination that keeps a factor thin: nested dissection (George 1973) with the points' own coordinates for guidance. A group
 * is halved across its longest axis; those of one half that touch the other come last.
 * @param points  coordinates of each point, `axes` numbers per point. Any layout in which neighbours lie close will do.
 * @param edges   pairs of points that touch.
 * @returns all points, the first to be eliminated first.
 */
export function dissectionOrder(points: Float64Array, axes: 2 | 3, edges: Uint32Array): Int32Array {
  const count = points.length / axes;
  const { starts, neighbours } = neighbourLists(edges, count);
  const side = new Int8Array(count).fill(-1);
  const order = new Int32Array(count);
  let end = 0;
  const append = (group: Int32Array): void => {
    order.set(group, end);
    end += group.length;
  };
  const part = (group: Int32Array): void => {
    if (group.length < SMALLEST_GROUP) return append(group);
    const axis = longestAxis(points, axes, group);
    const sorted = group.sort((a, b) => points[axes * a + axis] - points[axes * b + axis] || a - b);
    const half = sorted.length >> 1;
    for (let i = 0; i < sorted.length; i += 1) side[sorted[i]] = i < half ? 0 : 1;
    const touches = (v: number): boolean => {
      for (let i = starts[v]; i < starts[v + 1]; i += 1) if (side[neighbours[i]] === 0) return true;
      return false;
    };
    const right = sorted.subarray(half);
    const between = right.filter(touches);
    const beyond = right.filter((v) => !touches(v));
    const before = sorted.slice(0, half);
    for (const v of sorted) side[v] = -1;
    part(before);
    part(beyond);
    append(between);
  };
  part(Int32Array.from({ length: count }, (_, i) => i));
  return order;
}

function neighbourLists(edges: Uint32Array, count: number): { starts: Int32Array; neighbours: Int32Array } {
  const starts = new Int32Array(count + 1);
  for (const v of edges) starts[v + 1] += 1;
  for (let v = 0; v < count; v += 1) starts[v + 1] += starts[v];
  const fill = starts.slice();
  const neighbours = new Int32Array(edges.length);
  for (let e = 0; e < edges.length; e += 2) {
    neighbours[fill[edges[e]]++] = edges[e + 1];
    neighbours[fill[edges[e + 1]]++] = edges[e];
  }
  return { starts, neighbours };
}

function longestAxis(points: Float64Array, axes: number, group: Int32Array): number {
  let best = 0;
  let widest = -1;
  for (let axis = 0; axis < axes; axis += 1) {
    let low = Infinity;
    let high = -Infinity;
    for (const v of group) {
      const x = points[axes * v + axis];
      if (x < low) low = x;
      if (x > high) high = x;
    }
    if (high - low > widest) {
      widest = high - low;
      best = axis;
    }
  }
  return best;
}
