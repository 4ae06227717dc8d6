import { DisjointSets } from '../../base/disjoint-sets.ts';
import type { Stepwise } from '../../base/stepwise.ts';
import type { SourceModel } from '../../model/source-model.ts';
import { eachEdgeSteps, polygonSideSteps } from './polygon-sides.ts';

/** A number for each polygon that all polygons of its shell share: the lowest of theirs. Edges of any number of faces hold together. */
export function* shellSteps({
  faceStarts,
  faceVertices,
}: Pick<SourceModel, 'faceStarts' | 'faceVertices'>): Stepwise<Uint32Array> {
  const faceCount = faceStarts.length - 1;
  const sets = new DisjointSets(faceCount);
  const sides = yield* polygonSideSteps(faceStarts, faceVertices);
  const { face, order } = sides;
  yield* eachEdgeSteps(sides, faceVertices, (from, to) => {
    for (let i = from + 1; i < to; i += 1) sets.join(face[order[from]], face[order[i]]);
  });
  return new Uint32Array(faceCount).map((_, f) => sets.find(f));
}
