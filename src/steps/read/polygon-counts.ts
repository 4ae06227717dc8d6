import { DisjointSets } from '../../base/disjoint-sets.ts';
import { forEachEdge, polygonSides } from './polygon-sides.ts';

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
  let [edges, openEdges, nonManifoldEdges, turnedEdges, shells] = [0, 0, 0, 0, faces];
  const rimEnds: number[] = [];
  forEachEdge(sides, corners, (from, to) => {
    const first = order[from];
    const uses = to - from;
    edges += 1;
    if (uses === 1) {
      openEdges += 1;
      rimEnds.push(corners[first], corners[next[first]]);
    } else if (uses > 2) nonManifoldEdges += 1;
    else if (corners[first] === corners[order[from + 1]]) turnedEdges += 1;
    for (let i = from + 1; i < to; i += 1) {
      const other = order[i];
      if (byFace.join(face[first], face[other])) shells -= 1;
      const isAlong = corners[first] === corners[other];
      byCorner.join(first, isAlong ? other : next[other]);
      byCorner.join(next[first], isAlong ? next[other] : other);
    }
  });
  return {
    vertices,
    faces,
    edges,
    euler: vertices - edges + faces,
    shells,
    openLoops: groupsOfPairs(rimEnds),
    openEdges,
    nonManifoldEdges,
    nonManifoldVertices: verticesOfTwoFans(corners, byCorner),
    turnedEdges,
  };
}

/** How many groups hang together by pairs of numbers. */
function groupsOfPairs(pairs: readonly number[]): number {
  const places = new Map<number, number>();
  for (const v of pairs) if (!places.has(v)) places.set(v, places.size);
  const sets = new DisjointSets(places.size);
  let groups = places.size;
  for (let i = 0; i < pairs.length; i += 2) {
    if (sets.join(places.get(pairs[i]) as number, places.get(pairs[i + 1]) as number)) groups -= 1;
  }
  return groups;
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
