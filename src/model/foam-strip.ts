import type { FoamId, LayerId, PieceId, SeamId } from '../base/ids.ts';
import type { FoamPiece } from './foam-piece.ts';
import type { LengthRange } from './steep-join.ts';

/** What paper and lists call a thing that is cut from foam. */
export type CutThing = Pick<
  FoamPiece,
  'id' | 'number' | 'name' | 'quantity' | 'thicknessMm' | 'tracedSide' | 'revision' | 'hand' | 'twinOf'
>;

/** A straight strip that is cut beside the pieces, for a seam whose fold is beyond the blade. Traced on its face. */
export interface FoamStrip extends CutThing {
  /** `strip-` and the seam's id: no piece has it. */
  readonly id: PieceId;
  readonly seam: SeamId;
  /** Printed at the seam. */
  readonly letter: string;
  readonly layer: LayerId;
  readonly foam: FoamId;
  /** between: it parts the fold with the pieces beside it. over: it covers the gap that is left. */
  readonly use: 'between' | 'over';
  /** As long as the seam at its longest, a whole number of mm: its ends are trimmed in place. */
  readonly lengthMm: number;
  /** Width on the face and on the back; both change with the fold along the seam. */
  readonly faceMm: LengthRange;
  readonly backMm: LengthRange;
  /** Lean of both long edges, degrees from square; positive: the back edge stands inside the face edge. */
  readonly bevelDeg: number;
  /** Foam that one takes: its length by its greatest width, mm². */
  readonly areaMm2: number;
}
