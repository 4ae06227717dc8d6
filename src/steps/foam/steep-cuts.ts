import { deg } from '../../geom/vec.ts';
import type { SteepFigures, SteepWay } from '../../model/steep-join.ts';
import type { ChainBevels } from './chain-bevels.ts';
import { halvedCut, leanOf, STEEPEST_DRAWN_RAD, type Plate, type PlateCut } from './plate-joint.ts';
import { filledGap, stripBetween, seamsInstead, trimOver } from './steep-offers.ts';

/** What rounding leaves of a bevel, radians. */
const ROUNDING_RAD = 1e-9;

/** How far a plate is set back from where its halved edge would be, so that strips find room, mm: on the face and on the back, >= 0. */
export interface SetBack {
  readonly faceMm: number;
  readonly backMm: number;
}

/**
 * Room for strips between two plates. Strips of width `w` and the plates' surfaces beside them form one side of a polygon that turns by
 * `2 b / n` at each of its `n` corners; seen along the plane that halves the fold the strips span `w` times the sum of the cosines of their
 * leans, and the two set-backs `2 s cos b`:
 *
 *          ___w___
 *         /  strip \            s = w (sum over j = 1 .. n - 1 of cos(2 b j / n - b)) / (2 cos b)
 *      s /          \ s         for one strip: w / (2 cos b)
 *       /            \
 *
 * @param halfFold  `b`, signed, radians.
 * @param seams     `n`, at least 2.
 */
export function setBackFor(halfFold: number, seams: number, thicknessMm: number): SetBack {
  const half = drawn(halfFold);
  const { faceMm, backMm } = stripBetween(half, seams, thicknessMm);
  let span = 0;
  for (let j = 1; j < seams; j += 1) span += Math.cos((2 * half * j) / seams - half);
  const share = span / (2 * Math.cos(half));
  return { faceMm: share * faceMm, backMm: share * backMm };
}

const drawn = (halfFold: number): number => Math.min(STEEPEST_DRAWN_RAD, Math.max(-STEEPEST_DRAWN_RAD, halfFold));

/** Both plates set back for strips, each edge leaning an equal share of the fold. */
export function splitCut(halfFold: number, own: Plate, seams: number): PlateCut {
  const { faceMm, backMm } = halvedCut(halfFold, own);
  const back = setBackFor(halfFold, seams, own.faceMm - own.backMm);
  return { bevel: drawn(halfFold) / seams, faceMm: faceMm - back.faceMm, backMm: backMm - back.backMm };
}

/**
 * Cut no steeper than the blade leans. The plates touch on the inside of the fold, where the halved cuts would: at the back of a convex one, at
 * the face of a concave one.
 */
export function filledCut(halfFold: number, own: Plate, limit: number): PlateCut {
  const halved = halvedCut(halfFold, own);
  if (Math.abs(halfFold) <= limit + ROUNDING_RAD) return halved;
  const bevel = Math.sign(halfFold) * limit;
  const wide = (own.faceMm - own.backMm) * leanOf(bevel);
  return halfFold > 0
    ? { bevel, faceMm: halved.backMm + wide, backMm: halved.backMm }
    : { bevel, faceMm: halved.faceMm, backMm: halved.faceMm - wide };
}

/** Half folds along a seam, at both ends of each of its edges. */
const halfFoldsOf = ({ atStart, atEnd }: ChainBevels): readonly number[] => [...atStart, ...atEnd];

/** The sharpest half fold along a seam, signed, radians. */
export const sharpestOf = (bevels: ChainBevels): number =>
  halfFoldsOf(bevels).reduce((worst, half) => (Math.abs(half) > Math.abs(worst) ? half : worst), 0);

export const isTooSteep = (bevels: ChainBevels, limit: number): boolean =>
  Math.abs(sharpestOf(bevels)) > limit + ROUNDING_RAD;

/** In how many seams a seam is split: as many as its sharpest place needs. */
export const splitSeams = (bevels: ChainBevels, limit: number): number =>
  seamsInstead(drawn(sharpestOf(bevels)), limit);

/** What the chosen way comes to. @param limit the most blade or table lean, radians; the seam is steeper somewhere. */
export function steepFigures(way: SteepWay, bevels: ChainBevels, limit: number, thicknessMm: number): SteepFigures {
  const sharpest = drawn(sharpestOf(bevels));
  if (way === 'split') {
    const seams = splitSeams(bevels, limit);
    const widths = halfFoldsOf(bevels).map((half) => stripBetween(drawn(half), seams, thicknessMm));
    const range = (list: readonly number[]) => ({ min: Math.min(...list), max: Math.max(...list) });
    return {
      way,
      strips: seams - 1,
      bevelDeg: deg(Math.abs(sharpest) / seams),
      faceMm: range(widths.map(({ faceMm }) => faceMm)),
      backMm: range(widths.map(({ backMm }) => backMm)),
    };
  }
  const gapMm = filledGap(sharpest, limit, thicknessMm);
  const openOn = sharpest > 0 ? 'face' : 'back';
  return { way, gapMm, openOn, ...(way === 'trim' ? { trimMm: trimOver(gapMm, thicknessMm) } : {}) };
}
