import { placedPoints4, type Matrix4 } from '../../geom/matrix4.ts';
import type { Surface } from '../../mesh/surface.ts';
import type { ShellSurfaces } from './cut-holes.ts';
import type { FlatGround } from './on-pieces.ts';

/** A flat piece that lines are brought onto. */
export interface HostPiece {
  /** Its id among all pieces of the prop. */
  readonly id: string;
  readonly ground: FlatGround;
  /** How many are cut alike, where only one of them has the line; else 1. */
  readonly alike: number;
}

/** Pieces of one thickness, and the surfaces of the foam they become: triangles are those the patches of the pieces count. */
export interface MeetingHost {
  readonly shell: ShellSurfaces;
  readonly pieces: readonly HostPiece[];
}

/** A surface in another place. */
export const placedSurface = (surface: Surface, matrix: Matrix4): Surface => ({
  ...surface,
  positions: placedPoints4(matrix, surface.positions),
});
