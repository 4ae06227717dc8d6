import type { EdgeOffsets } from '../../geom/offset-ring.ts';
import { rad } from '../../geom/vec.ts';
import type { SeamChain } from '../../model/seams.ts';
import type { ShellLayer } from '../../model/shell-layer.ts';
import type { SteepJoin } from '../../model/steep-join.ts';
import type { ChainBevels } from './chain-bevels.ts';
import {
  areAlike,
  halvedCut,
  leanOf,
  plateOf,
  sharedCut,
  SQUARE_CUT,
  standingCut,
  STEEPEST_DRAWN_RAD,
  throughCut,
  type Plate,
  type PlateCut,
} from './plate-joint.ts';
import { filledCut, isTooSteep, splitCut, splitSeams, steepFigures } from './steep-cuts.ts';

/** How one side of a seam is cut, at both ends of each mesh edge of the chain, in its direction: radians and mm, see {@link PlateCut}. */
export interface SideCut {
  readonly bevel: EdgeOffsets;
  readonly face: EdgeOffsets;
  readonly back: EdgeOffsets;
}

/**
 * How the edges of a seam are cut to meet. `square`: not at all beside each other (laps, open edges). `halved`: both on the plane that halves
 * the fold. `shared`: two thicknesses, each with a bevel of its own. `rebate`: one stands on the other. `filled` and `split`: too steep to halve,
 * built as the maker chose (`SteepWay`).
 */
export type Joining = 'square' | 'halved' | 'shared' | 'rebate' | 'filled' | 'split';

/** How a seam is cut. */
export interface SeamCut {
  readonly joining: Joining;
  readonly sides: readonly SideCut[];
  /** What stands proud along the seam, on the face and on the back, greatest, mm; 0 where the surfaces run on. */
  readonly step: { readonly faceMm: number; readonly backMm: number };
  /** What the way chosen for a fold beyond the blade comes to; left out where none is needed or chosen. */
  readonly steep?: SteepJoin;
}

/** Folds that cannot be told from none, radians. */
const NO_FOLD_RAD = 1e-9;

/** What rounding leaves of a bevel, radians. */
const ROUNDING_RAD = 1e-9;

/**
 * The cuts of all seams (foam model 4). A rebate is cut where its edges lean no more than the limit, with 45 degrees on folds from 45 to 135;
 * two thicknesses share a fold unequally where neither edge would lean the wrong way, or more than can be drawn. All others meet on the plane
 * that halves their fold, and where the thicknesses differ there is a step.
 * @param bevels   half the fold along each chain; 0 for laps and open edges.
 * @param shells   per patch.
 * @param limitDeg steepest lean that is chosen for a rebate.
 */
export const seamCuts = (
  chains: readonly SeamChain[],
  bevels: readonly ChainBevels[],
  shells: readonly ShellLayer[],
  limitDeg: number,
): readonly SeamCut[] => chains.map((chain, c) => seamCut(chain, bevels[c], shells, rad(limitDeg)));

function seamCut(chain: SeamChain, bevels: ChainBevels, shells: readonly ShellLayer[], limit: number): SeamCut {
  const plates = chain.sides.map(({ patch }) => plateOf(shells[patch]));
  const joining = joiningOf(chain, bevels, plates, limit);
  const seams = joining === 'split' ? splitSeams(bevels, limit) : 1;
  const cutAt = (side: 0 | 1, halfFold: number): PlateCut => {
    const [own, mate] = [plates[side], plates[1 - side]];
    switch (joining) {
      case 'square':
        return SQUARE_CUT;
      case 'halved':
        return halvedCut(halfFold, own);
      case 'shared':
        return sharedCut(2 * halfFold, own, mate);
      case 'filled':
        return filledCut(halfFold, own, limit);
      case 'split':
        return splitCut(halfFold, own, seams);
      case 'rebate':
        return (chain.standSide === side ? standingCut : throughCut)(2 * halfFold, own, mate);
    }
  };
  return {
    joining,
    sides: chain.sides.map((_, side) => sideCut(bevels, (halfFold) => cutAt(side === 0 ? 0 : 1, halfFold))),
    step: stepOf(chain, joining, bevels, plates),
    ...(joining === 'filled' || joining === 'split' ? steepOf(chain, bevels, plates, cutAt, limit) : {}),
  };
}

/** What a seam beyond the blade comes to, and how far its edges stay behind those that would meet. */
function steepOf(
  { steep }: SeamChain,
  bevels: ChainBevels,
  plates: readonly Plate[],
  cutAt: (side: 0 | 1, halfFold: number) => PlateCut,
  limit: number,
): Pick<SeamCut, 'steep'> {
  if (steep === undefined) return {};
  const { bevel: _, ...room } = sideCut(bevels, (halfFold) => {
    const [whole, cut] = [halvedCut(halfFold, plates[0]), cutAt(0, halfFold)];
    return { bevel: 0, faceMm: 2 * (whole.faceMm - cut.faceMm), backMm: 2 * (whole.backMm - cut.backMm) };
  });
  return { steep: { room, ...steepFigures(steep, bevels, limit, plates[0].faceMm - plates[0].backMm) } };
}

function joiningOf(chain: SeamChain, bevels: ChainBevels, plates: readonly Plate[], limit: number): Joining {
  if (chain.kind === 'open' || chain.kind === 'lap') return 'square';
  const [a, b] = plates;
  const folds = [...bevels.atStart, ...bevels.atEnd].map((halfFold) => 2 * halfFold);
  const most = limit + ROUNDING_RAD;
  if (chain.kind === 'rebate' && folds.every((fold) => Math.abs(Math.abs(fold) - Math.PI / 2) <= most)) return 'rebate';
  if (areAlike(a, b)) {
    if (chain.steep === undefined || !isTooSteep(bevels, limit)) return 'halved';
    return chain.steep === 'split' ? 'split' : 'filled';
  }
  const isShared = (fold: number): boolean => {
    if (Math.abs(fold) < NO_FOLD_RAD) return false;
    const leans = [sharedCut(fold, a, b).bevel, sharedCut(fold, b, a).bevel].map((lean) => lean * Math.sign(fold));
    return leans.every((lean) => lean >= -ROUNDING_RAD && lean <= STEEPEST_DRAWN_RAD);
  };
  return folds.every(isShared) ? 'shared' : 'halved';
}

function sideCut({ atStart, atEnd }: ChainBevels, cutAt: (halfFold: number) => PlateCut): SideCut {
  const [start, end] = [atStart, atEnd].map((list) => Array.from(list, cutAt));
  const both = (figure: (cut: PlateCut) => number): EdgeOffsets => ({
    atStart: Float64Array.from(start, figure),
    atEnd: Float64Array.from(end, figure),
  });
  return { bevel: both((cut) => cut.bevel), face: both((cut) => cut.faceMm), back: both((cut) => cut.backMm) };
}

/**
 * On a lap the upper piece ends on the face of the lower one, which ends on the back of the upper one. Where two thicknesses meet on the plane
 * that halves their fold, the thicker one's edges stand out of it by what their heights differ over the cosine of half the fold.
 */
function stepOf(chain: SeamChain, joining: Joining, bevels: ChainBevels, plates: readonly Plate[]): SeamCut['step'] {
  const thick = (side: number): number => plates[side].faceMm - plates[side].backMm;
  if (chain.kind === 'lap') {
    const top = chain.topSide ?? chain.lapSide;
    return { faceMm: thick(top), backMm: thick(1 - top) };
  }
  const [a, b] = plates;
  if (joining !== 'halved' || areAlike(a, b)) return { faceMm: 0, backMm: 0 };
  const longest = [...bevels.atStart, ...bevels.atEnd].reduce(
    (most, half) => Math.max(most, Math.hypot(1, leanOf(half))),
    1,
  );
  return { faceMm: Math.abs(a.faceMm - b.faceMm) * longest, backMm: Math.abs(a.backMm - b.backMm) * longest };
}
