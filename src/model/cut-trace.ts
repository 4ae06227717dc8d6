import type { Finding } from '../base/finding.ts';
import type { Vec3 } from '../geom/vec.ts';
import type { SurfaceTrace } from './trace.ts';

/** A hole that one part is let into another by. */
export interface CutHole {
  /** Where its wall comes out on the face, on the surface that keeps its length, and on the back; null where it does not reach that surface. */
  readonly face: SurfaceTrace;
  readonly neutral: SurfaceTrace | null;
  readonly back: SurfaceTrace | null;
  /** At each point of `face`: lean of the blade from square, degrees; positive: the foam's back edge stands inside its face edge. */
  readonly bevelDeg: Float64Array;
  readonly leastBevelDeg: number;
  readonly greatestBevelDeg: number;
  /** Along `face`, mm. */
  readonly lengthMm: number;
}

/** All holes of one part in another. */
export interface CutHoles {
  readonly holes: readonly CutHole[];
  readonly findings: readonly Finding[];
}

/** Where a flat shape is set down on a surface. */
export interface BadgePlace {
  /** Its outline on the surface, one trace or more for each ring of it. */
  readonly outline: readonly SurfaceTrace[];
  /** From the highest place of the surface under it, where it comes to rest, down to the lowest, along the way it is set down, mm. */
  readonly greatestGapMm: number;
  /** Where that lowest place is. */
  readonly gapAt: Vec3;
  /** How far it is still above the surface as it was placed, at the place it would touch first, mm; negative: it stands in it. */
  readonly heightMm: number;
  /** Of the surface within the outline, mm². */
  readonly gluedMm2: number;
  readonly findings: readonly Finding[];
}
