import type { Vec3 } from '../../geom/vec.ts';
import type { GrainWish } from '../../model/flatten-settings.ts';

/** How a patch is to be laid flat. Plain data throughout, so that it can cross to a worker; all left out is the plain minimum. */
export interface FlattenOptions {
  /** Flat coordinates of the same patch found earlier, x y per local vertex, mm: where to begin when only the surface changed a little. */
  readonly start?: Float64Array;
  /**
   * x y z of the three corners of each triangle, mm, where they are not those of the surface: panels of a grooved piece on their hinges. The
   * piece takes the sizes of its triangles from them.
   */
  readonly corners?: Float64Array;
  /** Border edges that are to keep their length, as pairs of local vertices in the direction of their loop: all seams, and rims that must fit. */
  readonly heldEdges?: Uint32Array;
  /** Their lengths, mm, where they are not those of the surface. */
  readonly heldLengths?: Float64Array;
  /** Price of a wrong seam length against stretch inside the piece: see `seamSprings`; 0 is the plain minimum. */
  readonly seamPrice?: number;
  /** Price of squash against the same stretch, >= 1. */
  readonly squashPrice?: number;
  /** True to ease the worst spot at a small rise of the mean. */
  readonly evenOut?: boolean;
  /** Stiffness of each triangle beside plain foam, which has 1; > 0. */
  readonly stiffness?: Float64Array;
  /** Stretches of the border whose cut edge is to be a straight line. */
  readonly straightRuns?: readonly StraightRun[];
  readonly grain?: GrainOnSurface;
  /** True to keep borders from lying over each other, at the price of stretch. */
  readonly keepApart?: boolean;
  /** `first`: stop as soon as the shape is near its best, for a first look; `full` unless said. */
  readonly quality?: 'first' | 'full';
}

/** A stretch of border to be cut straight. */
export interface StraightRun {
  /** Three or more vertices of the border in the direction of their loop: the piece lies to the left. */
  readonly vertices: Uint32Array;
  /** How far outside the border the cut edge runs at each of them, mm: what a bevel or a lap adds there. */
  readonly outwardMm: Float64Array;
}

/** Where the grain of the sheet runs on the finished surface. */
export interface GrainOnSurface {
  /** Unit vector in the space of the model, laid onto each triangle: what the angle is counted from. */
  readonly axis: Vec3;
  /** Turn from it about the outward normal, radians, counter-clockwise seen from outside. */
  readonly turnRad: number;
  readonly stretch: GrainWish['stretch'];
}
