/** For each vertex its corners: corner `3 t + k` is corner `k` of triangle `t`. Packed: those of `v` are `corners[starts[v] .. starts[v + 1])`. */
export interface CornersAtVertices {
  readonly starts: Uint32Array;
  readonly corners: Uint32Array;
}

/** Sorts the corners of packed triangles by their vertex (a counting sort: one pass over the corners, twice). */
export function cornersAtVertices(triangles: Uint32Array, vertexCount: number): CornersAtVertices {
  const starts = new Uint32Array(vertexCount + 1);
  for (const v of triangles) starts[v + 1] += 1;
  for (let v = 0; v < vertexCount; v += 1) starts[v + 1] += starts[v];
  const next = starts.slice(0, vertexCount);
  const corners = new Uint32Array(triangles.length);
  for (let c = 0; c < triangles.length; c += 1) corners[next[triangles[c]]++] = c;
  return { starts, corners };
}

/** The corner before and after within the same triangle. */
export const cornerBefore = (c: number): number => (c % 3 === 0 ? c + 2 : c - 1);
export const cornerAfter = (c: number): number => (c % 3 === 2 ? c - 2 : c + 1);
