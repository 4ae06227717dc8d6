import { ringLength } from '../../geom/ring.ts';
import type { SeamChain } from '../../model/seams.ts';
import { allowanceOf, roleOf } from './edge-offsets.ts';
import type { EdgeRun } from './edge-runs.ts';
import type { PieceShape } from './piece-shape.ts';

/** Outlines of twins agree in length to this share; what is left is how the two were laid flat. */
const TWIN_LENGTH_SHARE = 2e-3;

/** Whether two pieces can be cut from one template turned over: the same lengths of the same kinds of edges. */
export function areAlike(
  a: PieceShape | null,
  b: PieceShape | null,
  runsA: readonly EdgeRun[],
  runsB: readonly EdgeRun[],
  chains: readonly SeamChain[],
): boolean {
  if (a === null || b === null) return false;
  const kinds = (runs: readonly EdgeRun[]): string =>
    runs
      .map(({ chain, side, count }) => `${roleOf(chains[chain], side)} ${count} ${allowanceOf(chains[chain], side)}`)
      .sort()
      .join(', ');
  const [lengthA, lengthB] = [ringLength(a.face.outline), ringLength(b.face.outline)];
  return (
    a.thicknessMm === b.thicknessMm &&
    kinds(runsA) === kinds(runsB) &&
    Math.abs(lengthA - lengthB) <= TWIN_LENGTH_SHARE * lengthA
  );
}
