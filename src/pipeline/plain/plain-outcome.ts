import type { PartId } from '../../base/ids.ts';
import type { InsertPlan } from '../../model/insert.ts';
import type { PlainPiece, PlainWork } from '../../model/plain-piece.ts';
import type { TrimResult } from '../../model/trim.ts';
import type { PlainPart } from '../../project/plain-part.ts';
import type { ClayPart } from '../clay-core-stage.ts';

/** What a part comes to; of strips on a sculpt also where they lie on it. */
export interface PlainMade extends PlainWork {
  readonly laid?: LaidStrips;
  readonly letIn?: InsertPlan;
}

/** Strips as they lie on a sculpt. */
export interface LaidStrips extends Pick<TrimResult, 'strips' | 'placing'> {
  readonly on: PartId;
}

/** Strips of a part of that name. */
export interface NamedStrips {
  readonly name: string;
  readonly laid: LaidStrips;
}

/** What a part came to that no sculpt was parted for, or the core of an area in clay. */
export interface PlainOutcome {
  readonly part: PlainPart | ClayPart;
  /** Null where its figures do not let it be made: a finding says why. */
  readonly work: PlainMade | null;
  readonly pieces: readonly PlainPiece[];
}
