import type { MeshPoint } from '../mesh/lines/mesh-line.ts';
import type { Weights } from '../mesh/lines/mesh-point.ts';

/**
 * A line in which a surface is met by another, told on that surface. Its stretch i, from point i to the next, lies in triangle `triangles[i]`; a closed
 * line has as many stretches as points and goes back to its first. What of the surface lies within the other is on its left, seen from outside.
 */
export interface SurfaceTrace {
  readonly closed: boolean;
  /** x y z per point, mm. */
  readonly places: Float64Array;
  readonly triangles: Uint32Array;
  /** For each stretch the weights of both its ends on the three corners of its triangle. */
  readonly ends: readonly (readonly [Weights, Weights])[];
  /** Each point as it is named elsewhere. */
  readonly points: readonly MeshPoint[];
}
