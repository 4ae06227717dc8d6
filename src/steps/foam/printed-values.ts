import type { FoamPiece } from '../../model/foam-piece.ts';
import type { SeamChain } from '../../model/seams.ts';
import type { EdgeRun } from './edge-runs.ts';
import type { Twin } from './mirror-twins.ts';
import type { SeamCut } from './seam-cuts.ts';

/** What the words at an edge say of how it is joined, beyond what its outline shows. */
function joinOf({ chain, side }: EdgeRun, chains: readonly SeamChain[], cuts: readonly SeamCut[]): readonly unknown[] {
  const { kind, topSide } = chains[chain];
  const { step, steep } = cuts[chain];
  return [
    ...(kind === 'lap' ? [topSide === side] : []),
    ...(steep === undefined ? [] : [steep.way]),
    ...(step.faceMm === 0 && step.backMm === 0 ? [] : [step.faceMm, step.backMm]),
  ];
}

/** Everything a template shows of a piece, so that its code changes with it. */
export function printedValues(
  piece: Omit<FoamPiece, 'revision'>,
  runs: readonly EdgeRun[],
  chains: readonly SeamChain[],
  cuts: readonly SeamCut[],
  calls: readonly { readonly number: number }[],
  twin: Twin | null,
): readonly unknown[] {
  const mates = runs
    .map(({ chain, side }) => chains[chain].sides[1 - side])
    .map((mate) => (mate === undefined ? 0 : calls[mate.patch].number));
  return [
    [piece.number, piece.name, piece.quantity, piece.thicknessMm, piece.foam, piece.tracedSide, piece.hand ?? ''],
    [piece.up, twin === null ? 0 : calls[twin.patch].number, mates],
    [piece.outline, piece.holes, piece.otherOutline, piece.otherHoles],
    piece.edges.map(({ letter, bevelDeg, allowanceMm }, i) => [
      letter,
      bevelDeg,
      allowanceMm,
      ...joinOf(runs[i], chains, cuts),
    ]),
    [piece.folds, piece.marks],
    ...(piece.scores === undefined ? [] : [piece.scores]),
    ...(piece.outlines === undefined ? [] : [piece.outlines]),
    ...(piece.tipHoles === undefined ? [] : [piece.tipHoles]),
    ...(piece.kerfs === undefined ? [] : [piece.kerfs]),
    ...(piece.grainRad === undefined && piece.shrinkage === undefined
      ? []
      : [[piece.grainRad ?? null, piece.shrinkage?.alongPct ?? 0, piece.shrinkage?.acrossPct ?? 0]]),
  ];
}
