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
  const seams = Math.max(2, Math.ceil(size / limit));
  const left = size / seams;
  const wider = thickness + 2 * thickness * Math.tan(left);
  const isConvex = bevel > 0;
  const gapMm = 2 * (thickness / Math.cos(limit)) * Math.sin(size - limit);
  return {
    split: {
      seams,
      bevel: Math.sign(bevel) * left,
      faceMm: isConvex ? wider : thickness,
      backMm: isConvex ? thickness : wider,
    },
    fill: { gapMm, openOn: isConvex ? 'face' : 'back' },
    trimMm: gapMm + 2 * thickness,
  };
}
