import { ok, type Result } from '../../base/result.ts';
import type { Matrix4 } from '../../geom/matrix4.ts';
import type { Hand, Placing } from '../../model/placing.ts';
import { standingsOf } from '../../steps/assembly/placing.ts';

/** Where a part stands and how many of it there are. */
export interface PartStanding {
  readonly transform: Matrix4;
  readonly copies: number;
  /** How many of the copies are mirror images of the part, and which hand it is itself; left out where none is. */
  readonly mirrored?: { readonly count: number; readonly ownHand: Hand };
}

/** A place as a part of a project has it. Left out, it stands at 0 0 0 as it is. Fails as `standingsOf` does. */
export function standingOf({ at = [0, 0, 0], ...rest }: Partial<Placing>): Result<PartStanding> {
  const standings = standingsOf({ at, ...rest });
  if (!standings.ok) return standings;
  const [own] = standings.value;
  const count = standings.value.filter(({ isMirrored }) => isMirrored).length;
  const standing = { transform: own.matrix, copies: standings.value.length };
  return ok(count === 0 ? standing : { ...standing, mirrored: { count, ownHand: own.hand ?? 'left' } });
}
