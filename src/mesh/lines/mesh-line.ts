/** A place on the sculpt in terms of the mesh: on a vertex, on an edge or inside a triangle. */
export type MeshPoint =
  | { readonly at: 'vertex'; readonly vertex: number }
  /** `share` runs from `edgeVertices[2 * edge]` (0) to `edgeVertices[2 * edge + 1]` (1), ends excluded. */
  | { readonly at: 'edge'; readonly edge: number; readonly share: number }
  /** `bary`: weights on the triangle's three corners, each > 0, sum 1. */
  | { readonly at: 'triangle'; readonly triangle: number; readonly bary: readonly [number, number, number] };

/**
 * A line on the surface. Consecutive points share a triangle (its closed hull), so each piece between them is straight. A closed line runs
 * from its last point back to its first and repeats neither.
 */
export interface MeshLine {
  readonly points: readonly MeshPoint[];
  readonly closed: boolean;
}
