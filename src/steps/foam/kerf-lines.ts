/** Straight kerfs of one width and depth, cut side by side into the inside of a bend so that a thick sheet rolls tightly. */
export interface KerfInput {
  /** Radius of the outside of the bend, mm. */
  readonly outsideRadiusMm: number;
  /** Thickness, mm, > 0. */
  readonly thicknessMm: number;
  /** What is left under a kerf, mm, 0 < hinge < thickness. */
  readonly hingeMm: number;
  /** Width of the kerf, wall to wall, mm, > 0. */
  readonly kerfMm: number;
  /** How far the sheet turns in all, radians, > 0. */
  readonly turnRad: number;
  /** A thinner hinge tears, mm. */
  readonly leastHingeMm: number;
}

export interface KerfLines {
  readonly count: number;
  readonly depthMm: number;
  /** From kerf to kerf along the middle of the hinges, which keeps its length, mm. */
  readonly spacingMm: number;
  /** Foam left standing between two kerfs, mm; 0 or less where they run into each other. */
  readonly webMm: number;
  /** Turn of each, radians, at most that at which its mouth shuts. */
  readonly turnEachRad: number;
  /** What is left open of the mouth, mm. */
  readonly mouthMm: number;
  /** Strain of either side of the hinge, per cent. */
  readonly hingePct: number;
  readonly fault: 'none' | 'too deep' | 'too close';
}

/** Webs thinner than this share of their depth tear out when they are cut [J]. */
const LEAST_WEB_SHARE = 0.5;

/** What kerfs are whatever they go round. */
export type KerfSizes = Pick<KerfLines, 'count' | 'depthMm' | 'turnEachRad' | 'mouthMm' | 'hingePct'>;

/**
 * The fewest kerfs with which the sheet comes round. The hinge of a kerf is `w` long and bends evenly; its walls stay square to it and so point
 * at the centre of its bend, `rho = w / a` from the middle of the hinge. The mouth lies `t - h/2` from there, so what is left of it is
 * `w - a (t - h/2)` along its arc: it shuts at `a = w / (t - h/2)`.
 *
 *      ____________________          ___-----___
 *     |      hinge h       |        /  _ a _    \     outside
 *     |      |  |  depth   |       /  / \ / \    \
 *     |______|  |__________|          \  V  /         walls meet at the mouth
 *             w                        \   /          when a = w / (t - h/2)
 *
 * @throws RangeError where a size is not positive or the hinge is no thinner than the sheet: the caller's mistake.
 */
export function kerfSizes({
  thicknessMm,
  hingeMm,
  kerfMm,
  turnRad,
}: Pick<KerfInput, 'thicknessMm' | 'hingeMm' | 'kerfMm' | 'turnRad'>): KerfSizes {
  if (!(hingeMm > 0 && hingeMm < thicknessMm && kerfMm > 0 && turnRad > 0))
    throw new RangeError(`kerfs ${kerfMm} wide, hinge ${hingeMm} of ${thicknessMm} mm, turn ${turnRad}`);
  const arm = thicknessMm - hingeMm / 2;
  // A turn of exactly n mouths needs n kerfs, whatever the last bit says.
  const count = Math.max(1, Math.ceil((turnRad * arm) / kerfMm - 1e-9));
  const turnEachRad = turnRad / count;
  return {
    count,
    depthMm: thicknessMm - hingeMm,
    turnEachRad,
    mouthMm: Math.max(0, kerfMm - turnEachRad * arm),
    hingePct: (50 * hingeMm * turnEachRad) / kerfMm,
  };
}

/** Whether so little foam stands between two kerfs that it tears out when they are cut. */
export const isWebThin = (webMm: number, depthMm: number): boolean => webMm < LEAST_WEB_SHARE * depthMm;

/**
 * Kerfs round a bend of one radius. Blocks between kerfs stay flat; on the whole the middle of the hinges follows `outsideRadius - h/2`, and
 * kerfs stand their turn times that apart.
 * @throws RangeError as {@link kerfSizes}, and where the radius is no greater than half the hinge.
 */
export function kerfLines(input: KerfInput): KerfLines {
  const { outsideRadiusMm, hingeMm, kerfMm, leastHingeMm } = input;
  if (!(outsideRadiusMm > hingeMm / 2))
    throw new RangeError(`kerfs with a hinge of ${hingeMm} round ${outsideRadiusMm} mm`);
  const sizes = kerfSizes(input);
  const spacingMm = sizes.turnEachRad * (outsideRadiusMm - hingeMm / 2);
  const webMm = spacingMm - kerfMm;
  const fault = hingeMm < leastHingeMm ? 'too deep' : isWebThin(webMm, sizes.depthMm) ? 'too close' : 'none';
  return { ...sizes, spacingMm, webMm, fault };
}
