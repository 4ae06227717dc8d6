import { DisjointSets } from '../../base/disjoint-sets.ts';
import type { Stepwise } from '../../base/stepwise.ts';
import { surveySteps } from './polygon-survey.ts';

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
export function* polygonCountSteps(
  starts: Uint32Array,
  corners: Uint32Array,
  vertices: number,
): Stepwise<PolygonCounts> {
  const survey = yield* surveySteps(starts, corners);
  const faces = starts.length - 1;
  return {
    vertices,
    faces,
    edges: survey.edgeCount,
    euler: vertices - survey.edgeCount + faces,
    shells: survey.shellCount,
    openLoops: groupsOfPairs(survey.openEdges),
    openEdges: survey.openEdges.length / 2,
    nonManifoldEdges: survey.crowdedEdges.length / 2,
    nonManifoldVertices: survey.splitVertices.length,
    turnedEdges: survey.turnedEdges.length / 2,
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
