import { DisjointSets } from '../../base/disjoint-sets.ts';

/** What can be counted on polygons without knowing where their corners lie. */
export interface PolygonCounts {
  readonly vertices: number;
  readonly faces: number;
  readonly edges: number;
  /** vertices - edges + faces */
  readonly euler: number;
  /** Groups of faces that hang together by edges. */
  readonly shells: number;
  /** Rims: groups of open edges that hang together. Rims that touch in a vertex count as one. */
  readonly openLoops: number;
  /** Edges of one face. */
  readonly openEdges: number;
  /** Edges of more than two faces. */
  readonly nonManifoldEdges: number;
  /** Vertices whose faces do not hang together by edges round the vertex. */
  readonly nonManifoldVertices: number;
  /** Edges along which two faces run the same way, so that one of them is turned over. */
  readonly turnedEdges: number;
}

/**
 * Counts what the polygons of a model make up.
 * @param starts    face `f` has corners `corners[starts[f] .. starts[f + 1])`, all different.
 * @param corners   any numbering; numbers that no face uses do not count.
 * @param vertices  how many different numbers `corners` holds.
 */
export function polygonCounts(starts: Uint32Array, corners: Uint32Array, vertices: number): PolygonCounts {
  const sides = polygonSides(starts, corners);
  const { order, next, face } = sides;
  const faces = starts.length - 1;
  const byFace = new DisjointSets(faces);
  const byCorner = new DisjointSets(corners.length);
  const rims = new Map<number, number>();
  let [edges, openEdges, nonManifoldEdges, turnedEdges, openLoops, shells] = [0, 0, 0, 0, 0, faces];
  const rimEnds: number[] = [];
  for (let start = 0; start < order.length;) {
    const first = order[start];
    let end = start + 1;
    while (end < order.length && isSameEdge(corners, next, first, order[end])) end += 1;
    edges += 1;
    const uses = end - start;
    if (uses === 1) {
      openEdges += 1;
      rimEnds.push(corners[first], corners[next[first]]);
    } else if (uses > 2) nonManifoldEdges += 1;
    else if (corners[first] === corners[order[start + 1]]) turnedEdges += 1;
    for (let i = start + 1; i < end; i += 1) {
      const other = order[i];
      if (byFace.join(face[first], face[other])) shells -= 1;
      const isAlong = corners[first] === corners[other];
      byCorner.join(first, isAlong ? other : next[other]);
      byCorner.join(next[first], isAlong ? next[other] : other);
    }
    start = end;
  }
  for (const v of rimEnds) if (!rims.has(v)) rims.set(v, rims.size);
  const byRim = new DisjointSets(rims.size);
  openLoops = rims.size;
  for (let i = 0; i < rimEnds.length; i += 2) {
    if (byRim.join(rims.get(rimEnds[i]) as number, rims.get(rimEnds[i + 1]) as number)) openLoops -= 1;
  }
  return {
    vertices,
    faces,
    edges,
    euler: vertices - edges + faces,
    shells,
    openLoops,
    openEdges,
    nonManifoldEdges,
    nonManifoldVertices: verticesOfTwoFans(corners, byCorner),
    turnedEdges,
  };
}

/** The sides of all polygons. Side `i` runs from corner `i` to corner `next[i]` of the packed list. */
export interface PolygonSides {
  readonly next: Uint32Array;
  readonly face: Uint32Array;
  /** Sides ordered by their lower vertex, then their higher, then their own number, so that sides of one edge stand together. */
  readonly order: Uint32Array;
}

export function polygonSides(starts: Uint32Array, corners: Uint32Array): PolygonSides {
  const next = new Uint32Array(corners.length);
  const face = new Uint32Array(corners.length);
  for (let f = 0; f + 1 < starts.length; f += 1) {
    for (let i = starts[f]; i < starts[f + 1]; i += 1) {
      next[i] = i + 1 < starts[f + 1] ? i + 1 : starts[f];
      face[i] = f;
    }
  }
  let keys = 0;
  for (const v of corners) keys = Math.max(keys, v + 1);
  const low = new Uint32Array(corners.length);
  const high = new Uint32Array(corners.length);
  for (let i = 0; i < corners.length; i += 1) {
    low[i] = Math.min(corners[i], corners[next[i]]);
    high[i] = Math.max(corners[i], corners[next[i]]);
  }
  const unsorted = Uint32Array.from({ length: corners.length }, (_, i) => i);
  return { next, face, order: sortedBy(low, keys, sortedBy(high, keys, unsorted)) };
}

/** True when two sides join the same two vertices. */
export function isSameEdge(corners: Uint32Array, next: Uint32Array, i: number, j: number): boolean {
  const [a, b] = [corners[i], corners[next[i]]];
  const [c, d] = [corners[j], corners[next[j]]];
  return (a === c && b === d) || (a === d && b === c);
}

/** Stable counting sort of `items` by `key[item]`, each key below `keys`. */
function sortedBy(key: Uint32Array, keys: number, items: Uint32Array): Uint32Array {
  const starts = new Uint32Array(keys + 1);
  for (const item of items) starts[key[item] + 1] += 1;
  for (let k = 0; k < keys; k += 1) starts[k + 1] += starts[k];
  const sorted = new Uint32Array(items.length);
  for (const item of items) sorted[starts[key[item]]++] = item;
  return sorted;
}

function verticesOfTwoFans(corners: Uint32Array, byCorner: DisjointSets): number {
  let largest = -1;
  for (const v of corners) largest = Math.max(largest, v);
  const fanOf = new Int32Array(largest + 1).fill(-1);
  const isSplit = new Uint8Array(largest + 1);
  let count = 0;
  for (let i = 0; i < corners.length; i += 1) {
    const v = corners[i];
    const fan = byCorner.find(i);
    if (fanOf[v] < 0) fanOf[v] = fan;
    else if (fanOf[v] !== fan && isSplit[v] === 0) {
      isSplit[v] = 1;
      count += 1;
    }
  }
  return count;
}
