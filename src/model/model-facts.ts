/** What `inspect` tells of a model. Counts speak of polygons as in the file; triangle figures stand beside. */
export interface ModelFacts {
  readonly vertices: number;
  readonly verticesAfterExactJoin: number;
  readonly faces: number;
  readonly triangles: number;
  /** Edges of polygons; diagonals that only triangulation made do not count. */
  readonly edges: number;
  readonly triangleEdges: number;
  /** vertices - edges + faces */
  readonly euler: number;
  readonly shells: number;
  readonly openLoops: number;
  readonly openEdges: number;
  /** Sum over shells, for closed or open manifold shells; null where the surface is not a manifold. */
  readonly genus: number | null;
  readonly nonManifoldEdges: number;
  readonly nonManifoldVertices: number;
  readonly turnedEdges: number;
  readonly emptyFaces: number;
  readonly doubledFaces: number;
  /** Area of the triangles the product works on, unit². */
  readonly area: number;
  /** Area when each polygon is fanned from its first corner, unit²: differs only where polygons are not flat. */
  readonly fanArea: number;
  readonly boxMin: readonly [number, number, number];
  readonly boxSize: readonly [number, number, number];
  /** Facts as they stand after exactly equal corners were joined, before near ones: an exporter's seams show here. */
  readonly afterExactJoin: {
    readonly vertices: number;
    readonly faces: number;
    readonly edges: number;
    readonly euler: number;
    readonly openLoops: number;
    readonly openEdges: number;
    readonly nonManifoldVertices: number;
  };
}
