import type { PieceId } from '../../base/ids.ts';
import type { GluedBody } from '../../model/gluing.ts';

/** Counts the units that come of gluing: I, II, III in the order in which they are begun. A unit keeps its number when it grows. */
export class Units {
  readonly #unitOf = new Map<PieceId, number>();
  #count: number;

  /** @param before  units that are called something already. */
  constructor(before = 0) {
    this.#count = before;
  }

  /** @param pieces all that hang together, lowest number first. */
  bodyOf(pieces: readonly PieceId[]): GluedBody {
    const unit = pieces.length === 0 ? undefined : this.#unitOf.get(pieces[0]);
    return unit === undefined ? { pieces } : { pieces, unit };
  }

  /** What two bodies make: it is called after the second, which is the larger, else after the first, else it is a new unit. */
  join(adds: GluedBody, onto: GluedBody, pieces: readonly PieceId[]): GluedBody {
    if (pieces.length < 2) return { pieces };
    const unit = onto.unit ?? adds.unit ?? (this.#count += 1);
    for (const piece of pieces) this.#unitOf.set(piece, unit);
    return { pieces, unit };
  }
}
