import { cheapestWay, changeSeams, seamDegrees, type SeamGraph } from './propose-graph.ts';

/** Angle defect from which a vertex is a sharp corner that no foam takes up inside a piece, radians. */
const SHARP = 0.2;
/** Share of all defect that sharp corners must hold for a tree over them to be worth a look. */
const MOST_OF_IT = 0.6;

/**
 * Seams joined to a tree that reaches every sharp corner of a surface: nearest corners first, along cheapest ways (a Steiner tree within
 * twice the shortest: Takahashi and Matsuyama, Math. Japonica 24, 1980). Where all bend of the surface stands in such corners, every
 * piece cut so is developable. Cone points as ends of cuts: Sheffer and Hart, "Seamster", 2002.
 * @param isSeam  seams there are; edges of the prop count as reached.
 * @returns null where the surface is smooth, or all its corners are reached.
 */
export function coneTree(graph: SeamGraph, positions: Float64Array, isSeam: Uint8Array): Uint8Array | null {
  const defects = defectsOf(graph, positions);
  let degree = seamDegrees(graph, isSeam);
  const isReached = (v: number): boolean => degree[v] > 0 || graph.isRim[v] === 1;
  const free = defects.map((defect, v) => (isReached(v) ? 0 : Math.abs(defect)));
  const sharp = [...free.keys()].filter((v) => free[v] > SHARP);
  const held = sharp.reduce((sum, v) => sum + free[v], 0);
  if (sharp.length < 2 || held < MOST_OF_IT * free.reduce((sum, each) => sum + each, 0)) return null;
  let next = isSeam;
  // On a closed surface without seams the tree begins at a corner.
  const root = degree.some((_, v) => isReached(v)) ? -1 : sharp[0];
  for (;;) {
    const targets = sharp.filter((v) => v !== root && !isReached(v));
    if (targets.length === 0) return next;
    const way = cheapestWay(graph, targets, (v) => v === root || isReached(v));
    if (way === null) return next;
    next = changeSeams(graph, next, [], way.edges);
    degree = seamDegrees(graph, next);
    if (way.edges.every((e) => next[e] === isSeam[e])) return next;
  }
}

/** What the angles round each vertex miss to a full turn, radians; 0 at edges of the prop. */
function defectsOf({ mesh, isRim, vertexCount }: SeamGraph, p: Float64Array): Float64Array {
  const missing = new Float64Array(vertexCount);
  const isUsed = new Uint8Array(vertexCount);
  for (let h = 0; h < mesh.triangles.length; h += 1) {
    const t = h - (h % 3);
    const [v, a, b] = [h, t + ((h - t + 1) % 3), t + ((h - t + 2) % 3)].map((corner) => 3 * mesh.triangles[corner]);
    let [dot, aa, bb] = [0, 0, 0];
    for (let i = 0; i < 3; i += 1) {
      const [x, y] = [p[a + i] - p[v + i], p[b + i] - p[v + i]];
      dot += x * y;
      aa += x * x;
      bb += y * y;
    }
    isUsed[v / 3] = 1;
    if (aa > 0 && bb > 0) missing[v / 3] -= Math.acos(Math.min(1, Math.max(-1, dot / Math.sqrt(aa * bb))));
  }
  return missing.map((sum, v) => (isRim[v] === 1 || isUsed[v] === 0 ? 0 : sum + 2 * Math.PI));
}
