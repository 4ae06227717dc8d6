import type { MeshLine, MeshPoint as PointOfMesh } from '../mesh/lines/mesh-line.ts';

/** A place on the sculpt in terms of the mesh: on a vertex, on an edge or inside a triangle. */
export type MeshPoint = PointOfMesh;

/** A line on the surface; consecutive points share a triangle, a closed line repeats no point. */
export type SurfaceLine = MeshLine;
