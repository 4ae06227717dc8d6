import type { Ring } from '../../geom/ring.ts';
import type { InsertCut } from '../../model/insert.ts';

/** Sheets of which so little is left are cut right through, mm: nobody leaves a tenth of foam standing. */
const LEAST_LEFT_MM = 0.1;

/**
 * What letting in to a depth cuts of each sheet of a wall.
 * @param wallMm  from the face inward.
 * @param side    from which it is let in.
 */
export function cutsInto(
  wallMm: readonly number[],
  side: 'back' | 'face',
  depthMm: number,
  what: InsertCut['what'],
  ring: Ring,
): readonly InsertCut[] {
  const cuts: InsertCut[] = [];
  let rest = depthMm;
  const order = wallMm.map((_, i) => (side === 'face' ? i : wallMm.length - 1 - i));
  for (const i of order) {
    if (!(rest > 0)) break;
    const isThrough = rest > wallMm[i] - LEAST_LEFT_MM;
    cuts.push({ sheet: i + 1, what, side, depthMm: isThrough ? wallMm[i] : rest, isThrough, ring });
    rest -= wallMm[i];
  }
  return cuts;
}

/** A hole through every sheet that is not yet open there. @param taken  what is cut already. */
export const cutsThrough = (
  wallMm: readonly number[],
  side: 'back' | 'face',
  ring: Ring,
  taken: readonly InsertCut[],
): readonly InsertCut[] =>
  wallMm.flatMap((depthMm, i): InsertCut[] =>
    taken.some(({ sheet, isThrough }) => sheet === i + 1 && isThrough)
      ? []
      : [{ sheet: i + 1, what: 'opening', side, depthMm, isThrough: true, ring }],
  );
