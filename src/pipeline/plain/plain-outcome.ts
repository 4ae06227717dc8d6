import type { PlainPiece, PlainWork } from '../../model/plain-piece.ts';
import type { PlainPart } from '../../project/plain-part.ts';

/** What a part came to that no sculpt was parted for. */
export interface PlainOutcome {
  readonly part: PlainPart;
  /** Null where its figures do not let it be made: a finding says why. */
  readonly work: PlainWork | null;
  readonly pieces: readonly PlainPiece[];
}
