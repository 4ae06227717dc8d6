import type { Finding } from '../base/finding.ts';
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
