import { triangleArea } from '../../src/mesh/measure.ts';
import type { FlatPiece } from '../../src/model/flat-piece.ts';

/** What is told of one surface laid flat, be it in one piece or in several. */
export interface FlatFigures {
  /** Area-weighted mean over all pieces; 4 is an isometry. */
  readonly energy: number;
  readonly flips: number;
  /** Pairs of triangles that lie on each other. */
  readonly overlaps: number;
  readonly converged: boolean;
  /** Most steps any piece took. */
  readonly steps: number;
}

/** @param areas  area of each piece in space, mm² */
export function joinFlats(flats: readonly FlatPiece[], areas: readonly number[]): FlatFigures {
  const total = areas.reduce((sum, area) => sum + area, 0);
  return {
    energy: flats.reduce((sum, flat, i) => sum + areas[i] * flat.energy, 0) / total,
    flips: flats.reduce((sum, flat) => sum + flat.flipped, 0),
    overlaps: flats.reduce((sum, flat) => sum + (flat.overlapCount ?? flat.overlaps.length), 0),
    converged: flats.every((flat) => flat.solve.converged),
    steps: Math.max(...flats.map((flat) => flat.solve.steps)),
  };
}

/** Area in space of the named triangles, mm². */
export function areaOf(positions: Float64Array, triangles: Uint32Array, which: Uint32Array): number {
  return which.reduce((sum, t) => sum + triangleArea(positions, triangles, t), 0);
}

/** A sum that changes with any coordinate of the result, to 1e-6 mm. */
export function checksumOf(flats: readonly FlatPiece[]): string {
  return flats.reduce((sum, { uv }) => uv.reduce((part, x) => part + Math.abs(x), sum), 0).toFixed(6);
}

/** Greatest over smallest stretch anywhere on the piece: what Milnor's bound is about. */
export function scaleRatioOf({ major, minor }: FlatPiece): number {
  return major.reduce((a, b) => Math.max(a, b), 0) / minor.reduce((a, b) => Math.min(a, b), Infinity);
}
