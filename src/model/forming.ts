import type { Vec2 } from '../geom/vec.ts';

/** One of the few places of a flat piece where the foam must give most (foam model 3). */
export interface WorstSpot {
  readonly kind: 'stretch' | 'squash';
  /** Triangle at the peak: local to the patch, and of the mesh. */
  readonly triangle: number;
  readonly meshTriangle: number;
  /** What the foam must give at the peak, per cent, > 0: the mean by area of the triangles round a vertex. */
  readonly percent: number;
  /** Area on the surface of all that is joined to the peak and gives at least 60 % as much, mm². */
  readonly areaMm2: number;
  /** Middle of the place, mm: in the flat piece, and on the surface in model space. */
  readonly at: Vec2;
  readonly point: readonly [number, number, number];
  /** Direction in the flat piece along which the foam is pulled (stretch) or gathered (squash) at the peak, radians from +x, 0 to pi. */
  readonly alongRad: number;
  /**
   * one: the place gives along `alongRad` as a whole. all: it gives about alike in every direction. edge: along the edge of the piece.
   * varied: in one direction at each point, but not in the same.
   */
  readonly way: 'one' | 'all' | 'edge' | 'varied';
}

/** A worst spot of a foam piece, with `at` and `alongRad` in the piece's own frame and words for people. */
export interface FoamSpot extends WorstSpot {
  /** What to do there, for example `pull along the up arrow` or `gather along the edge`. */
  readonly wayText: string;
  /** Where on the piece that is, for example `near the top` or `in the middle`. */
  readonly placeText: string;
}

/**
 * What no laying flat of a patch can better: greatest over least scale of the map between the flat piece and the finished shape, which is
 * the greatest `major` over the least `minor` of all its triangles. It is found from one round area inside the patch.
 */
export interface LeastRatio {
  /** At least 1; 1 where nothing is known, as for a developable patch. */
  readonly ratio: number;
  /** What the area is that asks for it: `flat` where `ratio` is 1. */
  readonly kind: 'dome' | 'saddle' | 'flat';
  /**
   * Vertex in the middle of that area, local to the patch in a flat piece and of the mesh in a foam piece, and a triangle of the mesh at
   * it; -1 for `flat`.
   */
  readonly centreVertex: number;
  readonly centreTriangle: number;
  /** The vertex's place on the surface, mm, or null for `flat`. */
  readonly centre: readonly [number, number, number] | null;
  /** Radius of the area along the surface, mm; 0 for `flat`. */
  readonly radiusMm: number;
  /** Angle defect of that area, degrees: what the angles round its vertices miss to full turns; 0 for `flat`. */
  readonly heldDeg: number;
  /** Angle defect of the whole patch, degrees, signed: a hemisphere holds 360, a saddle less than 0. */
  readonly defectDeg: number;
  /** The greatest dome and the greatest saddle found in any round area inside the patch, degrees, both >= 0. */
  readonly domeDeg: number;
  readonly saddleDeg: number;
}
