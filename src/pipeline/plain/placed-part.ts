import { fail, ok, type Result } from '../../base/result.ts';
import type { Matrix4 } from '../../geom/matrix4.ts';
import type { Hand, Placing } from '../../model/placing.ts';
import { MOST_COPIES, standingsOf } from '../../steps/assembly/placing.ts';

/** Where a part stands and how many of it there are. */
export interface PartStanding {
  readonly transform: Matrix4;
  readonly copies: number;
  /** How many of the copies are mirror images of the part, and which hand it is itself; left out where none is. */
  readonly mirrored?: { readonly count: number; readonly ownHand: Hand };
}

/**
 * A place as a part of a project has it. Left out, it stands at 0 0 0 as it is. Fails as `standingsOf` does.
 * @param each  how many of the part there are wherever one stands.
 */
export function standingOf({ at = [0, 0, 0], ...rest }: Partial<Placing>, each = 1): Result<PartStanding> {
  const standings = standingsOf({ at, ...rest });
  if (!standings.ok) return standings;
  const [own] = standings.value;
  const copies = standings.value.length * each;
  if (copies > MOST_COPIES)
    return fail('assembly/copies', `That makes ${copies} copies of one part: ask for at most ${MOST_COPIES}.`);
  const count = standings.value.filter(({ isMirrored }) => isMirrored).length * each;
  const standing = { transform: own.matrix, copies };
  return ok(count === 0 ? standing : { ...standing, mirrored: { count, ownHand: own.hand ?? 'left' } });
}
