import { DisjointSets } from '../../base/disjoint-sets.ts';
import type { Stepwise } from '../../base/stepwise.ts';
import { nearPairSteps } from './near-pairs.ts';

/**
 * Joins points that lie within `tolerance` of each other, in stretches, but never two corners of one face: a face would lose a side.
 *
 * The pairs are taken from the nearest to the farthest, equal distances by number. Two groups of points become one when no face has a
 * corner in both. So points join in chains: each link within the tolerance, the whole as long as it may be, until a face is in the way.
 * Nothing depends on the order of the file, except which of two pairs of equal length comes first.
 * @param xyz          packed points.
 * @param members      the points that faces use, ascending.
 * @param faceStarts   face `f` has corners `faceCorners[faceStarts[f] .. faceStarts[f + 1])`.
 * @param tolerance    unit of the points, > 0.
 * @returns for each point the lowest point of its group; null when none joined.
 */
export function* joinSteps(
  xyz: Float64Array,
  members: Uint32Array,
  faceStarts: Uint32Array,
  faceCorners: Uint32Array,
  tolerance: number,
): Stepwise<Uint32Array | null> {
  const pairs = yield* nearPairSteps(xyz, members, tolerance);
  if (pairs.first.length === 0) return null;
  const faces = facesOfPoints(pairs.first, pairs.second, faceStarts, faceCorners);
  const groups = new DisjointSets(xyz.length / 3);
  let hasJoined = false;
  for (let i = 0; i < pairs.first.length; i += 1) {
    const p = groups.find(pairs.first[i]);
    const q = groups.find(pairs.second[i]);
    if (p === q) continue;
    const [few, many] = inOrder(faces.get(p) as Set<number>, faces.get(q) as Set<number>);
    if (hasCommon(few, many)) continue;
    for (const f of few) many.add(f);
    groups.join(p, q);
    faces.set(Math.min(p, q), many);
    faces.delete(Math.max(p, q));
    hasJoined = true;
  }
  return hasJoined ? new Uint32Array(xyz.length / 3).map((_, p) => groups.find(p)) : null;
}

/** The faces at each point of the pairs. */
function facesOfPoints(
  first: Uint32Array,
  second: Uint32Array,
  faceStarts: Uint32Array,
  faceCorners: Uint32Array,
): Map<number, Set<number>> {
  const faces = new Map<number, Set<number>>();
  for (const p of first) faces.set(p, new Set());
  for (const p of second) faces.set(p, new Set());
  for (let f = 0; f + 1 < faceStarts.length; f += 1) {
    for (let i = faceStarts[f]; i < faceStarts[f + 1]; i += 1) faces.get(faceCorners[i])?.add(f);
  }
  return faces;
}

const inOrder = (a: Set<number>, b: Set<number>): [Set<number>, Set<number>] => (a.size <= b.size ? [a, b] : [b, a]);

function hasCommon(few: Set<number>, many: Set<number>): boolean {
  for (const f of few) if (many.has(f)) return true;
  return false;
}
