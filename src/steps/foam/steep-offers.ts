/** Ways to build a seam that is too sharp for the blade, in numbers. Lengths mm, angles radians. */
export interface SteepOffers {
  /** The fold shared out over more seams with strips of the same foam between them. */
  readonly split: {
    /** How many seams take the place of the one, at least 2. */
    readonly seams: number;
    /** What each of their edges leans from square, with the sign of the bevel it replaces. */
    readonly bevel: number;
    /** Width of each strip: the narrower side is as wide as the foam is thick. */
    readonly faceMm: number;
    readonly backMm: number;
  };
  /** Both edges cut as steep as the blade leans and glued where they touch: how wide the gap is at its mouth, and on which side that is. */
  readonly fill: { readonly gapMm: number; readonly openOn: 'face' | 'back' };
  /** A thin strip laid over that gap's mouth, a thickness wider on either side. */
  readonly trimMm: number;
}

/**
 * What can be done where a bevel is beyond what blade or table lean.
 *
 *     split over two seams             cut at the limit and filled
 *        ___ face ___
 *       /            \                  \  gap  /      the pieces touch at one edge; the rest of the fold,
 *      /\_         _/\                   \     /       twice what the blade cannot lean, is open
 *     /   \_ back_/   \                   \   /
 *
 * A strip between two edges that lean by `b` each is `2 t tan b` wider on the face than on the back (foam model 4). A cut that leans by `l` is
 * `t / cos l` long; two such cuts that stand `2 d` apart in angle and touch at one end are `2 d`'s chord apart at the other.
 * @param bevel     what the edges should lean, half the fold, radians, positive where the back edge stands inside; beyond the limit.
 * @param limit     the most a blade or table leans, radians, over 0.
 * @param thickness of the foam, mm.
 */
export function steepOffers(bevel: number, limit: number, thickness: number): SteepOffers {
  const size = Math.abs(bevel);
  if (!(limit > 0 && size > limit)) throw new RangeError(`bevel ${bevel} is not beyond ${limit}`);
  const seams = seamsInstead(bevel, limit);
  const gapMm = filledGap(bevel, limit, thickness);
  return {
    split: { seams, bevel: bevel / seams, ...stripBetween(bevel, seams, thickness) },
    fill: { gapMm, openOn: bevel > 0 ? 'face' : 'back' },
    trimMm: trimOver(gapMm, thickness),
  };
}

/** How many seams must share a fold so that none leans beyond the limit, at least 2. Half the fold and the limit in radians. */
export const seamsInstead = (halfFold: number, limit: number): number =>
  Math.max(2, Math.ceil(Math.abs(halfFold) / limit - ROUNDING));

/** What rounding leaves of a whole number of limits. */
const ROUNDING = 1e-9;

/** Width of each strip where a fold is shared over so many seams, mm: its narrower side is as wide as the foam is thick. */
export function stripBetween(
  halfFold: number,
  seams: number,
  thickness: number,
): { readonly faceMm: number; readonly backMm: number } {
  const wider = thickness + 2 * thickness * Math.tan(Math.abs(halfFold) / seams);
  return halfFold > 0 ? { faceMm: wider, backMm: thickness } : { faceMm: thickness, backMm: wider };
}

/** Mouth of the gap between two edges cut at the limit on a fold that asks for more, mm. */
export const filledGap = (halfFold: number, limit: number, thickness: number): number =>
  2 * (thickness / Math.cos(limit)) * Math.sin(Math.abs(halfFold) - limit);

/** Width of a trim strip over a gap: a thickness wider on either side, mm. */
export const trimOver = (gapMm: number, thickness: number): number => gapMm + 2 * thickness;
