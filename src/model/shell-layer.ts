import type { Finding } from '../base/finding.ts';
import type { FoamId, LayerId } from '../base/ids.ts';

/** Which surface of the finished foam the sculpt is (foam model 1). */
export type ModelIs = 'face' | 'middle' | 'back';

/** A vertex of the mesh whose planes cannot all be kept, and by how much the worst is missed, mm. */
export interface ShellCorner {
  readonly vertex: number;
  readonly missMm: number;
}

/**
 * One sheet's worth of wall: the sculpt moved to the surfaces of that sheet. Same triangles as the mesh; per-vertex positions, mm.
 * Planes stay planes, and both sides of a seam move alike, because each vertex moves once.
 */
export interface ShellLayer {
  readonly layer: LayerId;
  readonly foam: FoamId;
  readonly thicknessMm: number;
  /** k, the neutral surface's place counted from the back, 0 to 1. */
  readonly neutralFraction: number;
  readonly modelIs: ModelIs;
  /** Where its back lies, counted outward from the sculpt, mm; its face lies one thickness farther out. */
  readonly backMm: number;
  readonly facePositions: Float64Array;
  readonly neutralPositions: Float64Array;
  readonly backPositions: Float64Array;
  /** Where more than three panels meet in no single point of a surface of the sheet, by more than glue closes. */
  readonly corners: readonly ShellCorner[];
  readonly findings: readonly Finding[];
}
