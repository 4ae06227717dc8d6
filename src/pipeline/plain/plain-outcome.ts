import type { PartId } from '../../base/ids.ts';
import type { InsertPlan } from '../../model/insert.ts';
import type { PlainPiece, PlainWork } from '../../model/plain-piece.ts';
import type { TrimResult } from '../../model/trim.ts';
import type { WrappedArt } from '../../model/wrapped-art.ts';
import type { PlainPart } from '../../project/plain-part.ts';
import type { ClayPart } from '../clay-core-stage.ts';

/** What a part comes to; of strips and artwork on a sculpt also where they lie on it. */
export interface PlainMade extends PlainWork {
  readonly laid?: LaidStrips;
  readonly letIn?: InsertPlan;
  readonly engraved?: LaidArt;
}

/** Strips as they lie on a sculpt. */
export interface LaidStrips extends Pick<TrimResult, 'strips' | 'placing'> {
  readonly on: PartId;
}

/** Artwork as it lies on a sculpt. */
export interface LaidArt {
  readonly on: PartId;
  readonly art: WrappedArt;
}

/** Strips or artwork of a part of that name. */
export interface NamedStrips {
  readonly name: string;
  readonly laid: LaidStrips | LaidArt;
}

/** What a part came to that no sculpt was parted for, or the core of an area in clay. */
export interface PlainOutcome {
  readonly part: PlainPart | ClayPart;
  /** Null where its figures do not let it be made: a finding says why. */
  readonly work: PlainMade | null;
  readonly pieces: readonly PlainPiece[];
}
