import { DisjointSets } from '../../base/disjoint-sets.ts';
import { inStretches, type Stepwise } from '../../base/stepwise.ts';
import { eachEdgeSteps, polygonSideSteps } from './polygon-sides.ts';

/** Where polygons hang together and where they do not. Edges are pairs of vertices, packed one after the other. */
export interface PolygonSurvey {
  readonly edgeCount: number;
  /** Groups of faces that hang together by edges. */
  readonly shellCount: number;
  /** Edges of one face, each in the direction in which its face runs. */
  readonly openEdges: readonly number[];
  /** Edges of more than two faces. */
  readonly crowdedEdges: readonly number[];
  /** Edges along which two faces run the same way. */
  readonly turnedEdges: readonly number[];
  /** Vertices whose faces do not hang together by edges round the vertex, ascending. */
  readonly splitVertices: readonly number[];
}

/** Corners looked at in one stretch: a few milliseconds. */
const STRETCH_CORNERS = 131_072;

/** @param starts face `f` has corners `corners[starts[f] .. starts[f + 1])`, all different. */
export function* surveySteps(starts: Uint32Array, corners: Uint32Array): Stepwise<PolygonSurvey> {
  const sides = yield* polygonSideSteps(starts, corners);
  const { order, next, face } = sides;
  const byFace = new DisjointSets(starts.length - 1);
  const byCorner = new DisjointSets(corners.length);
  let edgeCount = 0;
  let shellCount = starts.length - 1;
  const openEdges: number[] = [];
  const crowdedEdges: number[] = [];
  const turnedEdges: number[] = [];
  yield* eachEdgeSteps(sides, corners, (from, to) => {
    const first = order[from];
    const uses = to - from;
    edgeCount += 1;
    if (uses === 1) openEdges.push(corners[first], corners[next[first]]);
    else if (uses > 2) crowdedEdges.push(corners[first], corners[next[first]]);
    else if (corners[first] === corners[order[from + 1]]) turnedEdges.push(corners[first], corners[next[first]]);
    for (let i = from + 1; i < to; i += 1) {
      const other = order[i];
      if (byFace.join(face[first], face[other])) shellCount -= 1;
      const isAlong = corners[first] === corners[other];
      byCorner.join(first, isAlong ? other : next[other]);
      byCorner.join(next[first], isAlong ? next[other] : other);
    }
  });
  return {
    edgeCount,
    shellCount,
    openEdges,
    crowdedEdges,
    turnedEdges,
    splitVertices: yield* splitVertexSteps(corners, byCorner),
  };
}

function* splitVertexSteps(corners: Uint32Array, byCorner: DisjointSets): Stepwise<number[]> {
  let largest = -1;
  for (const v of corners) largest = Math.max(largest, v);
  const fanOf = new Int32Array(largest + 1).fill(-1);
  const isSplit = new Uint8Array(largest + 1);
  yield* inStretches(corners.length, STRETCH_CORNERS, (from, to) => {
    for (let i = from; i < to; i += 1) {
      const v = corners[i];
      const fan = byCorner.find(i);
      if (fanOf[v] < 0) fanOf[v] = fan;
      else if (fanOf[v] !== fan) isSplit[v] = 1;
    }
  });
  const split: number[] = [];
  for (let v = 0; v <= largest; v += 1) if (isSplit[v] === 1) split.push(v);
  return split;
}
