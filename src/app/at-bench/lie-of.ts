import type { PieceId } from '../../base/ids.ts';
import type { Bench } from '../bench-state.ts';

/** A sheet that copies of a piece are cut from. */
export interface Lie {
  /** Its place in the layout, from 0. */
  readonly at: number;
  /** What is written on it; empty for one that is bought. */
  readonly label: string;
}

/** All sheets a piece is cut from: its copies may lie on several. */
export const lieOf = ({ sheets }: Bench, piece: PieceId): readonly Lie[] =>
  (sheets?.sheets ?? []).flatMap(({ placements, label = '' }, at) =>
    placements.some((placement) => placement.piece === piece) ? [{ at, label }] : [],
  );
